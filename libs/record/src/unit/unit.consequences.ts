import { coveredBy } from '@libs/judge';
import type { CompiledPlan, Finding, OpenHold, Proof } from '@libs/judge';
import { builtAgain } from './unit.laid-open';
import type { DefectRecorded, HoldPlaced, HoldReleased, UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';
import { entryOf, isGrave, saysTheSame } from './unit.findings';
import { known, saysOfOther } from './unit.judging';
import type { Unit } from './unit.state';

/** What a finding leads to is numbered by its place among the events of its command. */
export type Numbering = { readonly idBase: string; readonly before: number };

const idOf = ({ idBase, before }: Numbering, index: number): string => `${idBase}-${before + index}`;

export type Found = {
  readonly serial: string;
  readonly findings: readonly Finding[];
  /** Where it was found; null: in the field. */
  readonly foundAt: string | null;
  /** The crew of an operation, as far as it is on record. */
  readonly crewOf: (operation: string) => string | null;
};

/**
 * Grave findings of told work hold the unit. What differs from design, manual or standard is a defect besides,
 * and its hold goes when the defect is verified. A hold or defect that is open already is not opened twice.
 */
export const opened = (unit: Unit, found: Found, numbering: Numbering): readonly UnitEvent[] => {
  const events: UnitEvent[] = [];
  for (const finding of found.findings) {
    if (!isGrave(finding) || finding.rule === 'held' || isOpenAlready(unit, finding)) continue;

    const isNewDefect = finding.class === 'nonconformance' && finding.defect === undefined;
    const defect = isNewDefect ? idOf(numbering, events.length) : (finding.defect ?? null);
    if (isNewDefect && defect !== null) events.push(defectOf(found, finding, defect));
    events.push(holdOf(found.serial, finding, { hold: idOf(numbering, events.length), defect }));
  }
  return events;
};

const isOpenAlready = (unit: Unit, finding: Finding): boolean =>
  unit.holds.some(({ hold }) => {
    const raised = unit.raised[hold];
    return raised !== undefined && saysTheSame(raised.finding, finding);
  });

/** A rule knows the operation and what it said of it; which part of the home shows it, a person may add. */
const defectOf = ({ serial, foundAt, crewOf }: Found, finding: Finding, defect: string): DefectRecorded => ({
  type: 'DefectRecorded',
  data: {
    serial,
    defect,
    class: finding.class,
    component: finding.operation,
    symptom: finding.rule,
    place: finding.places?.[0] ?? null,
    foundAt,
    operation: finding.operation,
    charged: finding.station,
    ...madeBy(crewOf(finding.operation)),
    finding,
    photos: [],
    quantity: 1,
  },
});

export const madeBy = (crew: string | null): { readonly madeBy?: string } =>
  crew === null ? {} : { madeBy: crew };

export const holdOf = (
  serial: string,
  finding: Finding,
  { hold, defect }: { readonly hold: string; readonly defect: string | null },
): HoldPlaced => ({
  type: 'HoldPlaced',
  data: {
    serial,
    hold,
    reason: finding.rule,
    operation: finding.operation,
    characteristic: finding.characteristic ?? null,
    defect,
    finding,
  },
});

/** Said of work that is entered when nobody can look at it any more: such an entry proves nothing. */
const TOO_LATE: ReadonlySet<string> = new Set(['recorded-under-cover', 'seen-after-cover']);

const provesNothing = (finding: Finding): boolean => isGrave(finding) && TOO_LATE.has(finding.rule);

/** An entry as it bears on the holds that are open. */
export type Entered = {
  readonly operation: string;
  readonly proof: Proof;
  readonly findings: readonly Finding[];
};

type JudgingAfter = { readonly plan: CompiledPlan; readonly facts: UnitFacts };

/**
 * Holds that this entry makes good: what was missing has been recorded. A hold tied to a defect waits for its
 * verification, one placed by hand for a person.
 */
export const satisfied = (after: Unit, entry: Entered, judging: JudgingAfter): readonly HoldReleased[] => {
  const again = builtAgain(judging.plan, after).map((hold) => released(after.serial, hold, 'satisfied'));
  const buriedBy = coversUp(after, entry, judging);
  if (entry.findings.some(provesNothing) || isToldTooLate(after, entry, buriedBy)) return again;

  const isSatisfied = ({ hold, defect }: OpenHold): boolean => {
    const finding = after.raised[hold]?.finding;
    return (
      defect === null &&
      finding !== undefined &&
      !isBuried(finding, entry, buriedBy) &&
      isMadeGood(after, finding, entry, judging)
    );
  };
  const madeGood = after.holds.filter(isSatisfied);
  return [...madeGood.map(({ hold }) => released(after.serial, hold, 'satisfied')), ...again];
};

/** What has been taken from sight may be told again, and is no better proven for it. */
const coversUp = (
  after: Unit,
  { operation, proof }: Entered,
  { plan, facts }: JudgingAfter,
): ReadonlySet<string> =>
  new Set(proof === 'reconstructed' ? [] : coveredBy(plan, known(after, facts), operation));

/** Saying it a second time digs nothing up: what was told too late stays so until it is reconstructed. */
const isToldTooLate = (after: Unit, { operation }: Entered, buriedBy: ReadonlySet<string>): boolean =>
  buriedBy.size > 0 &&
  after.holds.some(({ hold }) => {
    const finding = after.raised[hold]?.finding;
    return finding !== undefined && TOO_LATE.has(finding.rule) && finding.operation === operation;
  });

const isBuried = (finding: Finding, { operation }: Entered, buriedBy: ReadonlySet<string>): boolean =>
  finding.operation === operation && hides(finding) && buriedBy.has(entryOf(finding));

const hides = ({ rule }: Finding): boolean => rule === 'cover-hides-unproven';

const isMadeGood = (after: Unit, finding: Finding, entry: Entered, judging: JudgingAfter): boolean => {
  if (entryOf(finding) === entry.operation) {
    return !entry.findings.some((said) => saysTheSame(said, finding));
  }
  return (
    finding.operation === entry.operation &&
    !saysOfOther(after, entryOf(finding), entry.operation, judging).some((said) => saysTheSame(said, finding))
  );
};

export const released = (
  serial: string,
  hold: string,
  how: HoldReleased['data']['how'],
  note?: string,
): HoldReleased => ({
  type: 'HoldReleased',
  data: { serial, hold, how, ...(note === undefined ? {} : { note }) },
});
