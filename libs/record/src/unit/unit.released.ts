import type { OpenHold } from '@libs/judge';
import type { RecordedUnitEvent } from './unit.events';
import type { Evidence, Unit } from './unit.state';

type Of<T extends RecordedUnitEvent['type']> = Extract<RecordedUnitEvent, { readonly type: T }>;

export const RED_TAG = 'red-tag';

/** A red tag is among the holds under this name, so that whatever minds a hold minds it. */
export const redTagHold = (tag: string): string => `${RED_TAG}-${tag}`;

export const causeRevised = (unit: Unit, { data }: Of<'CauseRevised'>): Unit => ({
  ...unit,
  defects: unit.defects.map((open) =>
    open.defect === data.defect ? { ...open, operation: data.operation, station: data.charged } : open,
  ),
  holds: unit.holds.map((open) =>
    open.defect === data.defect ? { ...open, operation: data.operation } : open,
  ),
});

export const redTagPlaced = (unit: Unit, { data, occurredAt }: Of<'RedTagPlaced'>): Unit => {
  const hold: OpenHold = {
    hold: redTagHold(data.tag),
    reason: RED_TAG,
    operation: null,
    characteristic: null,
    defect: null,
    since: occurredAt,
  };
  return { ...unit, redTags: [...unit.redTags, data.tag], holds: [...unit.holds, hold] };
};

export const redTagLifted = (unit: Unit, { data }: Of<'RedTagLifted'>): Unit => ({
  ...unit,
  redTags: unit.redTags.filter((tag) => tag !== data.tag),
  holds: unit.holds.filter(({ hold }) => hold !== redTagHold(data.tag)),
  closed: [...unit.closed, redTagHold(data.tag)],
});

/** What was laid open everywhere is as if never entered; at some places, those are open again. */
export const coverOpened = (unit: Unit, { data }: Of<'CoverOpened'>): Unit => {
  const { places } = data;
  const bare = data.undone.reduce((state, operation) => laidOpen(state, operation, places), unit);
  const kept = places.length > 0 ? [] : data.exposed.flatMap((operation) => usedFor(bare, operation));
  const opened = data.exposed.reduce((state, operation) => laidOpen(state, operation, places), bare);
  return {
    ...opened,
    builtIn: [...opened.builtIn, ...kept],
    laidOpen:
      data.hold === null
        ? opened.laidOpen
        : [...opened.laidOpen, { hold: data.hold, operations: [...data.undone, ...data.exposed] }],
    lastEntry: null,
  };
};

const laidOpen = (unit: Unit, operation: string, places: readonly string[]): Unit => {
  const done = unit.work[operation];
  if (done === undefined) return unit;
  if (places.length === 0) return withoutEntry(unit, operation);

  const except = [...new Set([...done.except, ...places])];
  return { ...unit, work: { ...unit.work, [operation]: { ...done, except } } };
};

const withoutEntry = (unit: Unit, operation: string): Unit => {
  const { [operation]: _done, ...work } = unit.work;
  const { [operation]: _kept, ...evidence } = unit.evidence;
  return { ...unit, work, evidence };
};

const usedFor = (unit: Unit, operation: string): Unit['builtIn'] => {
  const evidence = unit.evidence[operation];
  return evidence === undefined ? [] : usedIn(operation, evidence);
};

/** What an entry and those before it used: telling work again takes nothing out of the wall. */
export const usedIn = (operation: string, evidence: Evidence): Unit['builtIn'] => {
  const used = evidence.lots.map((lot) => ({ operation, lot }));
  return evidence.before === null ? used : [...usedIn(operation, evidence.before.evidence), ...used];
};
