import { epochMs } from '@libs/kernel';
import type { ChargedDefect, Step, UnitPassages } from './unit-passages';

/** One section at one station, from entering to leaving, with what is charged to it. */
export type Passage = {
  readonly station: string;
  readonly enteredAt: string;
  /** Null while the section is there. */
  readonly leftAt: string | null;
  /** Left with nothing of the station open. */
  readonly complete: boolean;
  /** No nonconformance charged to it was found by the time the section left. */
  readonly clean: boolean;
  /** None to this day, found later and in the field included. */
  readonly cleanWithEscapes: boolean;
  /** Nonconformances caught at their own station and mended by the crew that made them, before the section left. */
  readonly mended: number;
  readonly nonconformances: number;
  readonly punch: number;
  readonly shortages: number;
  readonly records: number;
};

type Stay = Pick<Passage, 'station' | 'enteredAt' | 'leftAt' | 'complete'>;

/** What the steps and defects of a unit amount to. */
export type WorkedOut = {
  readonly passages: readonly Passage[];
  /** Defects found after their section had left the station they are charged to. */
  readonly escaped: ReadonlySet<string>;
};

/** Details never change, and each is asked twice: as the new one, and as the old one of the next change. */
const remembered = new WeakMap<UnitPassages, WorkedOut>();

export const workedOut = (unit: UnitPassages): WorkedOut => {
  const known = remembered.get(unit);
  if (known !== undefined) return known;

  const answer = workOut(unit);
  remembered.set(unit, answer);
  return answer;
};

/**
 * A section counts once at a station, however often it comes back: first pass is what it looked like when it left
 * for the first time, and what is found between two visits had left it already.
 */
const workOut = (unit: UnitPassages): WorkedOut => {
  const stays = [...staysOnLine(unit.steps), ...staysInShops(unit)];
  const defects = Object.entries(unit.defects);
  return {
    passages: stays.map((stay) => charged(stay, unit)),
    escaped: new Set(defects.flatMap(([id, defect]) => (isEscape(defect, stays) ? [id] : []))),
  };
};

/**
 * A defect found in the field has escaped even where nothing is known of its station. A signature that is missing
 * is found nowhere, and a device that does not know its place is not the field.
 */
const isEscape = (defect: ChargedDefect, stays: readonly Stay[]): boolean => {
  const stay = stays.find(({ station }) => station === defect.charged);
  return stay === undefined
    ? defect.foundAt === null && defect.class !== 'record'
    : isAfterLeaving(defect, stay);
};

/** In the order it happened: a move entered late stands where it happened. */
const staysOnLine = (steps: readonly Step[]): readonly Stay[] => {
  const stays = new Map<string, Stay>();
  let here: string | null = null;

  for (const step of [...steps].sort(asItHappened)) {
    if (step.to === here) continue;
    const stay = here === null ? undefined : stays.get(here);
    if (stay?.leftAt === null) stays.set(stay.station, left(stay, step, steps));
    if (step.to !== null && !stays.has(step.to)) {
      stays.set(step.to, { station: step.to, enteredAt: step.at, leftAt: null, complete: false });
    }
    here = step.to;
  }
  return [...stays.values()];
};

const left = (stay: Stay, step: Step, steps: readonly Step[]): Stay => ({
  ...stay,
  leftAt: step.at,
  complete: step.to === null ? !step.leftOpen.includes(stay.station) : leavesComplete(stay, step, steps),
});

/** With moves entered out of order another move tells how the station was left; where none does, it is not known complete. */
const leavesComplete = (stay: Stay, step: Step, steps: readonly Step[]): boolean => {
  const leaving =
    step.from === stay.station
      ? step
      : steps.find(({ from, at }) => from === stay.station && epochMs(at) >= epochMs(stay.enteredAt));
  return leaving?.complete ?? false;
};

/** A shop has no moves: the move that brings the section to the first line station needing its product tells of it. */
const staysInShops = ({ shops }: UnitPassages): readonly Stay[] => {
  const first = new Map<string, Stay>();
  for (const { station, since, leftAt, complete } of shops) {
    if (!first.has(station)) first.set(station, { station, enteredAt: since, leftAt, complete });
  }
  return [...first.values()];
};

const charged = (stay: Stay, { defects }: UnitPassages): Passage => {
  const own = Object.values(defects).filter((defect) => defect.charged === stay.station);
  const nonconformances = own.filter((defect) => defect.class === 'nonconformance');
  const seen = nonconformances.filter((defect) => !isAfterLeaving(defect, stay));
  return {
    ...stay,
    clean: seen.length === 0,
    cleanWithEscapes: nonconformances.length === 0,
    mended: seen.filter((defect) => isMendedThere(defect, stay)).length,
    nonconformances: nonconformances.length,
    punch: countOf(own, 'punch'),
    shortages: countOf(own, 'shortage'),
    records: countOf(own, 'record'),
  };
};

const countOf = (defects: readonly ChargedDefect[], kind: ChargedDefect['class']): number =>
  defects.filter((defect) => defect.class === kind).length;

/** By when it happened, not by when it was entered: a defect found before leaving and sent later was seen in time. */
const isAfterLeaving = ({ occurredAt }: ChargedDefect, { leftAt }: Stay): boolean =>
  leftAt !== null && epochMs(occurredAt) > epochMs(leftAt);

const isMendedThere = (defect: ChargedDefect, { station, leftAt }: Stay): boolean =>
  defect.foundAt === station &&
  defect.reworkedAt !== null &&
  (leftAt === null || epochMs(defect.reworkedAt) <= epochMs(leftAt)) &&
  isSameCrew(defect);

/** A crew that is not named is the station's own: the defect was found and mended without leaving it. */
const isSameCrew = ({ madeBy, reworkedBy }: ChargedDefect): boolean =>
  madeBy === null || reworkedBy === null || madeBy === reworkedBy;

const asItHappened = (a: Step, b: Step): number => epochMs(a.at) - epochMs(b.at) || a.position - b.position;
