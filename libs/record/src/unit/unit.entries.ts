import type { DoneWork, RecordedValue } from '@libs/judge';
import type { RecordedUnitEvent } from './unit.events';
import type { Evidence, Unit } from './unit.state';

type Of<T extends RecordedUnitEvent['type']> = Extract<RecordedUnitEvent, { readonly type: T }>;

/** The entry leaves something to be done: the next one goes on where it ended. */
export const isUnfinished = (done: DoneWork | undefined): done is DoneWork =>
  done !== undefined && (done.except.length > 0 || done.missing.length > 0);

/** Values of an unfinished entry still stand where the next one gives none in their place. */
export const carriedOver = (
  before: DoneWork | undefined,
  values: readonly RecordedValue[],
): readonly RecordedValue[] => {
  if (!isUnfinished(before)) return values;

  const given = new Set(values.map(({ characteristic }) => characteristic));
  return [...before.values.filter(({ characteristic }) => !given.has(characteristic)), ...values];
};

export const workEntered = (unit: Unit, event: Of<'WorkRecorded' | 'TestRecorded'>): Unit => {
  const { operation, proof, except, values, crew, missing, lots, instrument, photos } = event.data;
  const before = unit.work[operation];
  const evidenceBefore = unit.evidence[operation];
  const done: DoneWork = {
    proof,
    except,
    values: event.type === 'TestRecorded' ? values : carriedOver(before, values),
    actor: event.data.signedBy ?? event.actor,
    crew,
    occurredAt: event.occurredAt,
    position: event.position,
    missing,
  };
  const evidence: Evidence = {
    lots,
    instrument,
    photos,
    satisfied: [],
    before:
      before === undefined || evidenceBefore === undefined
        ? null
        : { done: before, evidence: evidenceBefore },
  };
  return withEntry(unit, operation, done, evidence);
};

/** A correction mends an entry and takes its place; who signed it, when and where it stands do not change. */
export const workCorrected = (unit: Unit, { data }: Of<'WorkCorrected'>): Unit => {
  const { operation, except, values, missing } = data;
  const done = unit.work[operation];
  const evidence = unit.evidence[operation];
  if (done === undefined || evidence === undefined) return unit;

  return withEntry(unit, operation, { ...done, except, values, missing }, evidence);
};

const withEntry = (unit: Unit, operation: string, done: DoneWork, evidence: Evidence): Unit => ({
  ...unit,
  work: { ...unit.work, [operation]: done },
  evidence: { ...unit.evidence, [operation]: evidence },
  lastEntry: operation,
});

/** What stood before the mistaken entry stands again. */
export const workWithdrawn = (unit: Unit, { data }: Of<'WorkWithdrawn'>): Unit => {
  const { operation } = data;
  const { [operation]: _done, ...work } = unit.work;
  const { [operation]: taken, ...evidence } = unit.evidence;
  const before = taken?.before ?? null;
  if (before === null) return { ...unit, work, evidence, lastEntry: null };

  return {
    ...unit,
    work: { ...work, [operation]: before.done },
    evidence: { ...evidence, [operation]: before.evidence },
    lastEntry: null,
  };
};
