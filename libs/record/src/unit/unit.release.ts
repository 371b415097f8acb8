import type { CompiledPlan, Finding, OpenDefect, PlannedOperation, Source } from '@libs/judge';
import { isProven, judgeAsking, judgeWork } from '@libs/judge';
import { elapsedMs } from '@libs/kernel';
import { signerOf } from './unit.entering';
import type { Told } from './unit.entering';
import type { Judging } from './unit.guards';
import type { Unit } from './unit.state';

const PRACTICE: Source = { kind: 'practice', reference: '', row: '' };
const SEEN_ONCE: Source = { kind: 'published', reference: '3282.362(c)(1)', row: '' };

/** The plan's operation of affixing a label to this kind of unit. */
export const labellingOf = (plan: CompiledPlan, unit: Unit): PlannedOperation | undefined =>
  Object.values(plan.operations).find(({ label, scope }) => label && scope === unit.kind);

/**
 * All that stands between a section and its label: work unproven, tests older than what they tested, what is open of
 * any class, holds, the red tag, what is built in and quarantined since, and an agency that has not seen the home.
 * `told`: the labelling itself, where it is judged too.
 */
export const releaseFindings = (unit: Unit, told: Told | null, judging: Judging): readonly Finding[] => {
  const labelling = labellingOf(judging.plan, unit);
  const said = judged(unit, told, labelling, judging);
  const tellsOf = new Set(said.flatMap(({ defect }) => defect ?? []));
  const rest = { unit, labelling, judging };
  return [
    ...said,
    ...unsaidHolds(rest, said),
    ...unit.defects.filter(({ defect }) => !tellsOf.has(defect)).map((open) => stillOpen(rest, open)),
    ...staleTests(rest),
    ...unusableParts(rest),
    ...unseen(rest),
  ];
};

type Asked = {
  readonly unit: Unit;
  readonly labelling: PlannedOperation | undefined;
  readonly judging: Judging;
};

const judged = (
  unit: Unit,
  told: Told | null,
  labelling: PlannedOperation | undefined,
  { plan, facts }: Judging,
): readonly Finding[] => {
  if (labelling === undefined) return [];
  if (told === null) return judgeAsking(plan, unit, { operation: labelling.id, except: [] });

  const { station, occurredAt } = facts;
  const entry = { ...told, instrument: null, signer: signerOf(told, facts), station, occurredAt };
  return judgeWork(plan, unit, entry);
};

/** A hold is in the way of a label whatever it is about, and whether or not a rule had it in mind. */
const unsaidHolds = ({ unit, labelling }: Asked, said: readonly Finding[]): readonly Finding[] => {
  const told = new Set(said.flatMap(({ hold }) => hold ?? []));
  const ofDefects = new Set(unit.defects.map(({ defect }) => defect));
  return unit.holds
    .filter(({ hold, defect }) => !told.has(hold) && (defect === null || !ofDefects.has(defect)))
    .map(({ hold, reason, operation }) => ({
      ...about(labelling, operation),
      rule: 'held',
      class: 'record',
      recorded: reason,
      hold,
      source: PRACTICE,
    }));
};

const about = (
  labelling: PlannedOperation | undefined,
  operation: string | null,
  station: string | null = null,
): Pick<Finding, 'grade' | 'operation' | 'station' | 'entry'> => ({
  grade: 'refuse',
  operation: operation ?? labelling?.id ?? '',
  station,
  ...(labelling === undefined ? {} : { entry: labelling.id }),
});

const stillOpen = ({ labelling }: Asked, open: OpenDefect): Finding => ({
  ...about(labelling, open.operation, open.station),
  rule: 'defect-open',
  class: open.class,
  recorded: `${open.component} ${open.symptom}`,
  ...(open.place === null ? {} : { places: [open.place] }),
  defect: open.defect,
  source: PRACTICE,
});

/** A test says something of what was there when it was made. What it needs was worked on since: it says nothing now. */
const staleTests = ({ unit, labelling, judging: { plan } }: Asked): readonly Finding[] =>
  Object.values(plan.operations)
    .filter(({ entry, id, scope }) => entry === 'T' && scope === unit.kind && isProven(plan, unit, id))
    .flatMap((test) => {
      const newer = test.requires.find(({ operation }) => isNewer(unit, operation, test.id));
      if (newer === undefined) return [];
      return [
        {
          ...about(labelling, test.id, test.station),
          rule: 'test-not-recent',
          class: 'record',
          recorded: newer.operation,
          source: newer.source,
        } as const,
      ];
    });

const isNewer = (unit: Unit, operation: string, test: string): boolean => {
  const done = unit.work[operation];
  const tested = unit.work[test];
  return done !== undefined && tested !== undefined && elapsedMs(tested.occurredAt, done.occurredAt) > 0;
};

const unusableParts = ({ labelling, judging: { plan, facts } }: Asked): readonly Finding[] =>
  facts.unusable.map(({ operation, rule, kind, id }) => ({
    ...about(labelling, operation, plan.operations[operation]?.station ?? null),
    rule,
    class: 'nonconformance',
    required: kind,
    recorded: id,
    source: PRACTICE,
  }));

/** Each home in at least one stage; which of its sections was looked at is the agency's choice. */
const unseen = ({ labelling, judging: { facts } }: Asked): readonly Finding[] =>
  facts.agencySaw.length > 0
    ? []
    : [{ ...about(labelling, null), rule: 'stage-not-seen', class: 'record', source: SEEN_ONCE }];
