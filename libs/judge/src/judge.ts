import type { Asking, Entry, WorkState } from './entry';
import { judgeEquipment } from './equipment';
import type { Finding, Rule } from './finding';
import { judgeOrder } from './order';
import type { CompiledPlan, Grade, PlannedOperation } from './plan';
import { judgeSigner } from './signer';
import { judgeStops } from './stops';
import { judgeTimes } from './times';
import { judgeUnderCover } from './under-cover';
import { judgeValues } from './values';

/** All there is to say of work told as done. Empty: all as planned. Never throws on bad values; says so. */
export const judgeWork = (plan: CompiledPlan, state: WorkState, entry: Entry): readonly Finding[] => {
  const operation = plan.operations[entry.operation];
  if (operation === undefined) return [notPlanned(plan, entry.operation, 'hold')];

  const doing = { operation, except: entry.except };
  const order = plan.enforced ? judgeOrder(plan, state, doing) : [];
  const stops = judgeStops(plan, state, doing).map((finding) => asTold(operation, finding));
  return [
    ...judgeValues(operation, entry),
    ...saidOnce(order, stops),
    ...(plan.enforced ? judgeUnderCover(plan, state, operation, entry) : []),
    ...(plan.enforced ? judgeTimes(plan, state, operation, entry.occurredAt) : []),
    ...judgeSigner(plan, state, operation, entry),
    ...judgeEquipment(operation, entry),
  ];
};

/** All there is to say of an asking. Cleared when no finding is of grade `refuse`. */
export const judgeAsking = (plan: CompiledPlan, state: WorkState, asking: Asking): readonly Finding[] => {
  const operation = plan.operations[asking.operation];
  if (operation === undefined) return [notPlanned(plan, asking.operation, 'refuse')];

  const doing = { operation, except: asking.except };
  const { occurredAt } = asking;
  const order = plan.enforced ? judgeOrder(plan, state, doing) : [];
  return [
    ...saidOnce(order, judgeStops(plan, state, doing)),
    ...(plan.enforced && occurredAt !== undefined ? judgeTimes(plan, state, operation, occurredAt) : []),
  ];
};

/** Holds that stand open for no other reason than that work is not on record. */
const FOR_ABSENCE: ReadonlySet<string> = new Set<Rule>([
  'cover-hides-unproven',
  'required-work-unproven',
  'value-missing',
]);

/**
 * Work that is missing is missed once: the hold that an earlier cover or test raised over the same absence says
 * nothing more, and goes with it. The finding of the order takes its name along.
 */
const saidOnce = (order: readonly Finding[], stops: readonly Finding[]): readonly Finding[] => {
  if (order.length === 0 || stops.length === 0) return [...order, ...stops];

  const holdFor = (missing: Finding): string | undefined =>
    stops.find((stop) => isSameAbsence(missing, stop))?.hold;
  return [
    ...order.map((missing) => {
      const hold = holdFor(missing);
      return hold === undefined ? missing : { ...missing, hold };
    }),
    ...stops.filter((stop) => !order.some((missing) => isSameAbsence(missing, stop))),
  ];
};

const isSameAbsence = (missing: Finding, stop: Finding): boolean =>
  stop.rule === 'held' &&
  FOR_ABSENCE.has(stop.recorded ?? '') &&
  missing.operation === stop.operation &&
  FOR_ABSENCE.has(missing.rule) &&
  (missing.grade === 'refuse' || stop.grade !== 'refuse');

const notPlanned = (plan: CompiledPlan, operation: string, grade: Grade): Finding => ({
  rule: 'operation-not-planned',
  grade,
  class: 'record',
  operation,
  station: null,
  source: { kind: 'design', reference: `revision ${plan.revision}`, row: '' },
});

/**
 * A hold or defect that was open before this was told stays open and stops the next gate by itself, so the
 * telling only notes it. Two things are worse for having been told: a defect closed up, and a label affixed.
 */
const asTold = (operation: PlannedOperation, finding: Finding): Finding =>
  finding.rule === 'cover-hides-defect' || operation.label ? finding : { ...finding, grade: 'note' };
