import type { CompiledPlan, DoneWork, Entry, Finding, Rule, WorkState } from '@libs/judge';
import { judgeWork } from '@libs/judge';
import { carriedOver } from './unit.entries';
import type { RecordedUnitEvent } from './unit.events';
import { isGrave, saysTheSame } from './unit.findings';
import type { Recordings } from './unit.revision';

/** An entry another revision would not have accepted, and what it would have said of it. */
export type RetroFound = {
  readonly serial: string;
  readonly operation: string;
  readonly position: number;
  readonly occurredAt: string;
  readonly findings: readonly {
    readonly finding: Finding;
    /** It was said of that entry at the time too, by the revision it was judged by. */
    readonly saidThen: boolean;
  }[];
};

/** One unit's entries judged again by one plan, in the order they were recorded. */
export type RetroChecker = {
  readonly state: WorkState;
  /** `others`: what is known besides of the sections of a home. Null: nothing to say, or no entry of work. */
  readonly take: (event: RecordedUnitEvent, others?: () => WorkState) => RetroFound | null;
  /** Its order changed: what is entered from here on is judged by another plan. */
  readonly judgeBy: (plan: CompiledPlan) => void;
};

/**
 * The rules that speak of recorded values and of order. Who might sign, and what lots and instruments were good for,
 * was so on that day and is on record; it is not judged again.
 */
const JUDGED_AGAIN: ReadonlySet<Rule> = new Set<Rule>([
  'value-out-of-limits',
  'value-missing',
  'value-of-wrong-kind',
  'relation-not-met',
  'cover-hides-unproven',
  'required-work-unproven',
  'recorded-under-cover',
  'seen-after-cover',
  'too-soon-after',
  'too-long-after',
  'operation-not-planned',
]);

type EntryEvent = Extract<
  RecordedUnitEvent,
  { readonly type: 'WorkRecorded' | 'TestRecorded' | 'WorkCorrected' }
>;
type Work = { [operation: string]: DoneWork };

/**
 * A lean fold of its own, kept in place: of a whole unit's state an entry is judged by nothing but the work, and a
 * history of years is folded at once.
 */
export const retroChecker = (first: CompiledPlan, recordings: Recordings): RetroChecker => {
  let plan = first;
  const work: Work = {};
  const before = new Map<string, DoneWork[]>();
  const state: WorkState = { work, defects: [], holds: [] };

  const judged = (
    event: EntryEvent,
    done: DoneWork,
    others: (() => WorkState) | undefined,
  ): readonly Finding[] => {
    const known = others === undefined ? state : { ...state, work: { ...others().work, ...work } };
    return judgeWork(plan, known, asEntered(event, done, recordings)).filter(
      (finding) => isGrave(finding) && JUDGED_AGAIN.has(finding.rule),
    );
  };

  const enter = (event: EntryEvent, others: (() => WorkState) | undefined): RetroFound | null => {
    const { operation } = event.data;
    const last = work[operation];
    const done = doneOf(event, last);
    const findings = judged(event, done, others);
    if (last !== undefined && event.type !== 'WorkCorrected') push(before, operation, last);
    work[operation] = { ...done, missing: missingOf(event, findings) };
    return findings.length === 0 ? null : foundIn(event, findings);
  };

  const take: RetroChecker['take'] = (event, others) => {
    switch (event.type) {
      case 'WorkRecorded':
      case 'TestRecorded':
      case 'WorkCorrected':
        return enter(event, others);
      case 'WorkWithdrawn':
        standAgain(work, event.data.operation, before.get(event.data.operation)?.pop());
        return null;
      case 'CoverOpened':
        for (const operation of [...event.data.undone, ...event.data.exposed]) {
          layOpen(work, operation, event.data.places);
        }
        return null;
      default:
        return null;
    }
  };
  const judgeBy = (next: CompiledPlan): void => {
    plan = next;
  };
  return { state, take, judgeBy };
};

const push = (lists: Map<string, DoneWork[]>, operation: string, done: DoneWork): void => {
  const list = lists.get(operation);
  if (list === undefined) lists.set(operation, [done]);
  else list.push(done);
};

const standAgain = (work: Work, operation: string, done: DoneWork | undefined): void => {
  if (done === undefined) Reflect.deleteProperty(work, operation);
  else work[operation] = done;
};

/** What was laid open everywhere is as if never entered; at some places, those are open again. */
const layOpen = (work: Work, operation: string, places: readonly string[]): void => {
  const done = work[operation];
  if (done === undefined) return;
  if (places.length === 0) Reflect.deleteProperty(work, operation);
  else work[operation] = { ...done, except: [...new Set([...done.except, ...places])] };
};

const doneOf = (event: EntryEvent, last: DoneWork | undefined): DoneWork => {
  const { proof, except, values, crew, missing } = event.data;
  if (event.type === 'WorkCorrected' && last !== undefined) return { ...last, except, values, missing };
  return {
    proof,
    except,
    values: event.type === 'TestRecorded' ? values : carriedOver(last, values),
    actor: event.actor,
    crew,
    occurredAt: event.occurredAt,
    position: event.position,
    missing,
  };
};

const asEntered = ({ data, station }: EntryEvent, done: DoneWork, recordings: Recordings): Entry => ({
  operation: data.operation,
  proof: done.proof,
  except: done.except,
  values: done.values,
  lots: data.lots.length === 0 ? NO_LOTS : data.lots.flatMap((id) => recordings.lot(id) ?? []),
  instrument: data.instrument === null ? null : recordings.instrument(data.instrument),
  photos: data.photos,
  signer: { actor: done.actor, crew: done.crew, roles: NO_ROLES },
  station,
  occurredAt: done.occurredAt,
});

const NO_LOTS: Entry['lots'] = [];
const NO_ROLES: readonly string[] = [];

/** By either revision: what was left open then was gone on with then. */
const missingOf = ({ data }: EntryEvent, findings: readonly Finding[]): readonly string[] => {
  if (data.missing.length === 0 && findings.length === 0) return data.missing;
  const asked = findings.flatMap(({ rule, operation, characteristic }) =>
    rule === 'value-missing' && operation === data.operation && characteristic !== undefined
      ? [characteristic]
      : [],
  );
  return [...new Set([...data.missing, ...asked])];
};

const foundIn = (event: EntryEvent, findings: readonly Finding[]): RetroFound => ({
  serial: event.data.serial,
  operation: event.data.operation,
  position: event.position,
  occurredAt: event.occurredAt,
  findings: findings.map((finding) => ({
    finding,
    saidThen: event.data.findings.some((said) => saysTheSame(said, finding)),
  })),
});
