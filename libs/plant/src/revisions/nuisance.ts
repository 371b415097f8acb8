import { ruleSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { Finding } from '@libs/judge';
import type { Envelope } from '@libs/kernel';
import { typeOf } from '@libs/ledger';
import type { HoldPlaced, HoldReleased } from '@libs/record';
import type { Workings } from '../workings';

type Nuisance = AnswerOf<'nuisance'>;

type Tally = {
  readonly rule: Finding['rule'];
  readonly operation: string;
  readonly characteristic: string | null;
  raised: number;
  overruled: number;
  signature: number;
  mended: number;
};

const PAGE = 5_000;

/**
 * How each rule's holds ended, counted as the log grows: the first who asks after a start waits for the whole of it,
 * everyone after that for what is new.
 */
export const nuisanceQuestion = (workings: Workings): (() => Promise<Nuisance>) => {
  const tallies = new Map<string, Tally>();
  const open = new Map<string, Tally>();
  let position = 0;
  let reading: Promise<void> = Promise.resolve();

  const catchUp = async (): Promise<void> => {
    for (;;) {
      const page = await workings.ledger.after(position, PAGE);
      for (const event of page) count(event, tallies, open);
      position = page.at(-1)?.position ?? position;
      if (page.length < PAGE) return;
    }
  };
  return async () => {
    // One after the other: two at once would count the same page twice.
    reading = reading.then(catchUp, catchUp);
    await reading;
    return {
      position,
      rules: [...tallies.values()].map((tally) => answerOf(tally, workings)).sort(worstFirst),
    };
  };
};

const count = (event: Envelope, tallies: Map<string, Tally>, open: Map<string, Tally>): void => {
  switch (typeOf(event.schema)) {
    case 'HoldPlaced': {
      const { hold, finding } = placedIn(event);
      if (finding === undefined) return;
      const tally = tallyOf(finding, tallies);
      tally.raised += 1;
      open.set(`${event.stream} ${hold}`, tally);
      return;
    }
    case 'HoldReleased': {
      const { hold, how } = releasedIn(event);
      const key = `${event.stream} ${hold}`;
      const tally = open.get(key);
      open.delete(key);
      if (tally !== undefined) end(tally, how);
      return;
    }
    default:
  }
};

/** Withdrawn with a mistaken entry: it was never there. */
const end = (tally: Tally, how: HoldReleased['data']['how']): void => {
  if (how === 'withdrawn') tally.raised -= 1;
  if (how === 'decided') tally.overruled += 1;
  if (how === 'satisfied') tally.signature += 1;
  if (how === 'verified') tally.mended += 1;
};

const tallyOf = ({ rule, operation, characteristic }: Finding, tallies: Map<string, Tally>): Tally => {
  const key = `${rule} ${operation} ${characteristic ?? ''}`;
  const known = tallies.get(key);
  if (known !== undefined) return known;
  const fresh = {
    rule,
    operation,
    characteristic: characteristic ?? null,
    raised: 0,
    overruled: 0,
    signature: 0,
    mended: 0,
  };
  tallies.set(key, fresh);
  return fresh;
};

const answerOf = (tally: Tally, { names }: Workings): Nuisance['rules'][number] => {
  const { rule, operation, characteristic, raised, overruled, signature, mended } = tally;
  const current = names.current();
  return {
    rule,
    name: ruleSays(rule) ?? { en: rule, es: rule },
    operation,
    operationName: current.operation(operation),
    characteristic,
    label: characteristic === null ? null : current.characteristic(operation, characteristic),
    raised,
    overruled,
    signature,
    mended,
    open: raised - overruled - signature - mended,
  };
};

const forNothing = ({ overruled, signature }: Nuisance['rules'][number]): number => overruled + signature;

const worstFirst = (a: Nuisance['rules'][number], b: Nuisance['rules'][number]): number =>
  forNothing(b) - forNothing(a) || b.raised - a.raised || (a.operation < b.operation ? -1 : 1);

/** The event's type has said already what its data are. */
const placedIn = ({ data }: Envelope): HoldPlaced['data'] => data as unknown as HoldPlaced['data'];
const releasedIn = ({ data }: Envelope): HoldReleased['data'] => data as unknown as HoldReleased['data'];
