import type { Envelope } from '@libs/kernel';
import { KeyReused, NotRecordable } from '../fault';
import { typed } from '../recorded';
import type { AnsweredKey, LogStore, Tenure } from './log-store';
import type { Waiting } from './queue';
import { Stage } from './stage';
import type { Folding, Verdict } from './stage';
import type { Held, States } from './states';

export type Decided = {
  /** One for each asking, in order. */
  readonly verdicts: readonly Verdict[];
  readonly events: readonly Envelope[];
  readonly keys: readonly AnsweredKey[];
  readonly changed: ReadonlyMap<string, Held>;
};

export type BatchGround = {
  readonly ledger: string;
  readonly tenure: Tenure;
  readonly recordedAt: string;
  readonly states: States;
  readonly store: Pick<LogStore, 'answered' | 'events' | 'replay'>;
};

/** Facts may name streams that other facts lead to. No decision needs a longer chain than this. */
const ROUNDS_LIMIT = 16;

/**
 * Decides a batch, loading what is missing. Keys that come again are rare, and the commit finds them by itself: so
 * keys are looked up only when that has happened (`careful`), or where there is nothing to commit for them.
 */
export const decideBatch = async (
  batch: readonly Waiting[],
  ground: BatchGround,
  careful: boolean,
): Promise<Decided> => {
  if (careful) return decideKnowing(await answersTo(keysIn(batch), ground), batch, ground);

  const decided = await decideKnowing(NONE, batch, ground);
  const unkeyed = batch.filter((_, n) => isUnkeyed(decided.verdicts[n]));
  if (unkeyed.length === 0) return decided;

  const before = await answersTo(keysIn(unkeyed), ground);
  return before.size === 0 ? decided : decideBatch(batch, ground, true);
};

const NONE: ReadonlyMap<string, Answer> = new Map();

const keysIn = (batch: readonly Waiting[]): readonly string[] => batch.map(({ asking }) => asking.meta.key);

/** No event of it goes into the commit, so that no key of it would be found to be taken there. */
const isUnkeyed = (verdict: Verdict | undefined): boolean =>
  verdict === undefined || verdict.is !== 'recorded' || verdict.events.length === 0;

const decideKnowing = async (
  before: ReadonlyMap<string, Answer>,
  batch: readonly Waiting[],
  ground: BatchGround,
): Promise<Decided> => {
  const loaded = new Map<string, Held>();
  for (let round = 0; round < ROUNDS_LIMIT; round += 1) {
    const stage = new Stage({
      ledger: ground.ledger,
      head: ground.tenure.head,
      recordedAt: ground.recordedAt,
      // What this batch loaded stays at hand for it, however small the cache.
      held: (stream) => loaded.get(stream) ?? ground.states.get(stream),
    });
    const decided = decideAll(batch, before, stage);
    if (decided !== undefined) return decided;

    await load(stage.missing, ground, loaded);
  }
  throw new NotRecordable(
    'A batch',
    `its facts name further streams after ${ROUNDS_LIMIT} rounds of loading`,
  );
};

type Answer = { readonly digest: Buffer; readonly events: readonly Envelope[] };

const answersTo = async (
  keys: readonly string[],
  { store, tenure }: BatchGround,
): Promise<ReadonlyMap<string, Answer>> => {
  const before = new Map<string, Answer>();
  for (const { key, digest, first, count } of await store.answered(keys, tenure.epoch)) {
    before.set(key, { digest, events: await store.events(first, count) });
  }
  return before;
};

/** Undefined when a stream is missing; the stage then knows all that can be known to be missing. */
const decideAll = (
  batch: readonly Waiting[],
  before: ReadonlyMap<string, Answer>,
  stage: Stage,
): Decided | undefined => {
  const verdicts: Verdict[] = [];
  const here = new Map<string, Answer>();

  for (const { asking, digest } of batch) {
    const { key } = asking.meta;
    const answer = before.get(key) ?? here.get(key);
    if (answer !== undefined) {
      verdicts.push(again(key, digest, answer));
      continue;
    }
    if (stage.missing.size > 0) {
      stage.gather(asking);
      continue;
    }
    const verdict = stage.decide(asking);
    if (verdict === undefined) continue;
    verdicts.push(verdict);
    if (verdict.is === 'recorded' && verdict.events.length > 0)
      here.set(key, { digest, events: verdict.events });
  }
  if (stage.missing.size > 0) return undefined;
  return { verdicts, events: stage.events, keys: keysOf(here), changed: stage.changed };
};

const again = (key: string, digest: Buffer, answer: Answer): Verdict =>
  answer.digest.equals(digest)
    ? { is: 'repeated', events: answer.events }
    : { is: 'failed', error: new KeyReused(key) };

const keysOf = (here: ReadonlyMap<string, Answer>): readonly AnsweredKey[] =>
  [...here].flatMap(([key, { digest, events }]) => {
    const [first] = events;
    return first === undefined ? [] : [{ key, digest, first: first.position, count: events.length }];
  });

/** All that is missing, in one query. A stream nobody wrote to yet is known as that. */
const load = async (
  missing: ReadonlyMap<string, Folding>,
  { store, states }: BatchGround,
  loaded: Map<string, Held>,
): Promise<void> => {
  const folded = new Map<string, Held>();
  for (const [stream, { initial }] of missing) folded.set(stream, { state: initial, version: 0 });

  await store.replay([...missing.keys()], (event) => {
    const folding = missing.get(event.stream);
    const held = folded.get(event.stream);
    if (folding === undefined || held === undefined) return;
    folded.set(event.stream, { state: folding.evolve(held.state, typed(event)), version: event.version });
  });

  for (const [stream, held] of folded) {
    loaded.set(stream, held);
    states.set(stream, held);
  }
};
