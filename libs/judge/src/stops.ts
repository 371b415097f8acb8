import type { Closing } from './covers';
import { closings } from './covers';
import type { OpenDefect, OpenHold, WorkState } from './entry';
import type { Finding } from './finding';
import type { Doing } from './order';
import type { CompiledPlan, Grade, PlannedOperation, Source } from './plan';
import { indexOf } from './plan-index';

/** A hold or a defect is its own authority. */
const OWN: Source = { kind: 'practice', reference: '', row: '' };

/**
 * Open holds and nonconformances in the way. A gate or a label minds every hold; a cover only those on what
 * lies behind it; a test or a start those on what it needs. A label minds every open nonconformance too.
 * Each is said once: the defect, or else the hold that hangs on nothing but itself.
 */
export const judgeStops = (plan: CompiledPlan, state: WorkState, doing: Doing): readonly Finding[] => {
  if (state.holds.length === 0 && state.defects.length === 0) return [];

  const reach = reachOf(plan, state, doing);
  const defects = state.defects.flatMap((defect) => judgeDefect(plan, doing, reach, defect));
  const told = new Set(defects.map(({ defect }) => defect));
  const holds = state.holds
    .filter(({ defect }) => defect === null || !told.has(defect))
    .flatMap((hold) => judgeHold(plan, doing, reach, hold));
  return [...defects, ...holds];
};

/** How grave something on an operation is for what is being done; undefined where it is of no concern. */
type Reach = {
  readonly hidden: (operation: string) => Closing | undefined;
  readonly required: ReadonlySet<string>;
};

const reachOf = (plan: CompiledPlan, state: WorkState, { operation }: Doing): Reach => {
  const closed = closings(plan, state, operation);
  const { beneath } = indexOf(plan);
  return {
    hidden: (id) => gravest(closed.filter(({ hidden }) => beneath(hidden).has(id))),
    required: new Set(operation.requires.map((edge) => edge.operation)),
  };
};

const RANK: { readonly [grade in Grade]: number } = { note: 0, hold: 1, refuse: 2 };

const gravest = (closed: readonly Closing[]): Closing | undefined =>
  closed.reduce<Closing | undefined>(
    (worst, one) => (worst === undefined || RANK[one.grade] > RANK[worst.grade] ? one : worst),
    undefined,
  );

const judgeDefect = (
  plan: CompiledPlan,
  doing: Doing,
  reach: Reach,
  open: OpenDefect,
): readonly Finding[] => {
  if (open.class !== 'nonconformance') return [];
  const closing = closingOver(doing, reach, open);
  if (closing !== undefined) {
    return [defectFinding(plan, doing.operation, open, { rule: 'cover-hides-defect', ...closing })];
  }
  const inTheWay = doing.operation.label || (open.operation !== null && reach.required.has(open.operation));
  return inTheWay
    ? [defectFinding(plan, doing.operation, open, { rule: 'defect-open', grade: 'refuse', source: OWN })]
    : [];
};

/** What would close the defect up, unless it lies at a place that stays open. */
const closingOver = (
  { except }: Doing,
  reach: Reach,
  { operation, place }: OpenDefect,
): Closing | undefined => {
  const closing = operation === null ? undefined : reach.hidden(operation);
  const staysOpen = place !== null && [...except, ...(closing?.inSight ?? [])].includes(place);
  return staysOpen ? undefined : closing;
};

const defectFinding = (
  plan: CompiledPlan,
  doing: PlannedOperation,
  open: OpenDefect,
  { rule, grade, source }: Pick<Finding, 'rule' | 'grade' | 'source'>,
): Finding => ({
  rule,
  grade,
  class: 'nonconformance',
  operation: open.operation ?? doing.id,
  station:
    open.operation === null ? open.station : (plan.operations[open.operation]?.station ?? open.station),
  entry: doing.id,
  recorded: `${open.component} ${open.symptom}`,
  ...(open.place === null ? {} : { places: [open.place] }),
  defect: open.defect,
  source,
});

const judgeHold = (
  plan: CompiledPlan,
  { operation }: Doing,
  reach: Reach,
  hold: OpenHold,
): readonly Finding[] => {
  const grade = gradeOfHold(operation, reach, hold);
  if (grade === undefined) return [];
  return [
    {
      rule: 'held',
      grade,
      class: 'record',
      operation: hold.operation ?? operation.id,
      station: plan.operations[hold.operation ?? operation.id]?.station ?? null,
      entry: operation.id,
      ...(hold.characteristic === null ? {} : { characteristic: hold.characteristic }),
      recorded: hold.reason,
      hold: hold.hold,
      source: OWN,
    },
  ];
};

/** Its own record made good is no reason to refuse an operation: that is what it is asked for. */
const gradeOfHold = (operation: PlannedOperation, reach: Reach, hold: OpenHold): Grade | undefined => {
  const own = hold.operation === operation.id && hold.defect === null;
  if ((operation.gate || operation.label) && !own) return 'refuse';
  if (hold.operation === null || own) return undefined;
  return reach.required.has(hold.operation) ? 'refuse' : reach.hidden(hold.operation)?.grade;
};
