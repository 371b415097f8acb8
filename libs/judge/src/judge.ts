import type { Asking, Entry, WorkState } from './entry';
import { judgeEquipment } from './equipment';
import type { Finding } from './finding';
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
  return [
    ...judgeValues(operation, entry),
    ...(plan.enforced ? judgeOrder(plan, state, doing) : []),
    ...(plan.enforced ? judgeUnderCover(plan, state, operation, entry) : []),
    ...(plan.enforced ? judgeTimes(plan, state, operation, entry.occurredAt) : []),
    ...judgeStops(plan, state, doing).map((finding) => asTold(operation, finding)),
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
  return [
    ...(plan.enforced ? judgeOrder(plan, state, doing) : []),
    ...(plan.enforced && occurredAt !== undefined ? judgeTimes(plan, state, operation, occurredAt) : []),
    ...judgeStops(plan, state, doing),
  ];
};

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
