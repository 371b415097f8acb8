import type { CompiledPlan } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { OpenCover } from './unit.release.commands';
import type { HoldPlaced, UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';
import { judgingOf, operationGuard } from './unit.guards';
import type { Guard, UnitDecision } from './unit.rejections';
import type { CoverOpened } from './unit.release.events';
import type { Unit } from './unit.state';
import { first, placesGuard } from './unit.values';

/** Why a labelled section is held again. */
export const LAID_OPEN = 'laid-open';

/** What is taken down is undone, and so is what was built on it; what it hid has to be proven before it is covered again. */
export const openCover = ({ data }: OpenCover, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const { plan, codes } = ready.judging;
  const operations = [data.operation, ...data.also];
  const unfit =
    first(operations, (operation) => operationGuard(unit, operation, ready.judging)) ??
    placesGuard(data.places, codes) ??
    first(operations, (operation) => recordedGuard(unit, operation)) ??
    defectGuard(unit, data.defect);
  if (unfit !== null) return reject(unfit);

  const { also: _also, ...rest } = data;
  const opened: CoverOpened = {
    type: 'CoverOpened',
    data: {
      ...rest,
      ...laidOpenBy(plan, unit, operations),
      hold: unit.label === null ? null : `${facts.idBase}-1`,
    },
    revision: plan.revision,
    planDigest: plan.digest,
  };
  const { hold } = opened.data;
  return hold === null ? accept(opened) : accept<UnitEvent>(opened, heldAgain(unit, data.operation, hold));
};

const recordedGuard = (unit: Unit, operation: string): Guard =>
  unit.work[operation] === undefined ? { code: 'cover-not-recorded', operation } : null;

const defectGuard = (unit: Unit, defect: string | null): Guard =>
  defect === null || unit.defects.some((open) => open.defect === defect)
    ? null
    : { code: 'defect-unknown', defect };

/** What hangs on a cover by hiding it goes with it: tape with the board, paint only where somebody says so. */
const laidOpenBy = (
  plan: CompiledPlan,
  unit: Unit,
  operations: readonly string[],
): Pick<CoverOpened['data'], 'undone' | 'exposed'> => {
  const undone = new Set(operations);
  for (const gone of undone) {
    for (const id of plan.order) {
      if (unit.work[id] !== undefined && hides(plan, id, gone)) undone.add(id);
    }
  }
  const exposed = plan.order.filter(
    (id) =>
      !undone.has(id) && unit.work[id] !== undefined && [...undone].some((gone) => hides(plan, gone, id)),
  );
  return { undone: plan.order.filter((id) => undone.has(id)), exposed };
};

const hides = (plan: CompiledPlan, cover: string, operation: string): boolean =>
  (plan.operations[cover]?.hides ?? []).some(
    (hide) => hide.operation === operation && hide.hidden !== 'lift',
  );

/** A label says that all is proven. From now on that is not so, and nothing leaves before it is again. */
const heldAgain = (unit: Unit, operation: string, hold: string): HoldPlaced => ({
  type: 'HoldPlaced',
  data: {
    serial: unit.serial,
    hold,
    reason: LAID_OPEN,
    operation,
    characteristic: null,
    defect: null,
  },
});
