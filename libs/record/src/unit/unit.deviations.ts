import type { Deviation, Finding, PlannedOperation } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { ApproveDeviation } from './unit.change.commands';
import { released } from './unit.consequences';
import { freed, managerOnly } from './unit.defects';
import type { UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';
import { saysTheSame } from './unit.findings';
import { known } from './unit.judging';
import type { Guard, UnitDecision } from './unit.rejections';
import { changesUnder } from './unit.revision';
import type { Unit } from './unit.state';

/** Approved for one home: its plan asks something else from here on, and what was only wrong by the old is not. */
export const approveDeviation = ({ data }: ApproveDeviation, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  if (unit.deviations.some(({ deviation }) => deviation === data.deviation.deviation)) return accept();
  const unfit = managerOnly(facts) ?? deviationGuard(data.deviation, facts);
  if (unfit !== null) return reject(unfit);

  return accept<UnitEvent>(
    { type: 'DeviationApproved', data: { ...data, serial: unit.serial } },
    ...madeGood(unit, facts),
  );
};

/** An operation that is not in this unit's plan is another section's: nothing to say of it here. */
const deviationGuard = ({ operation, allows }: Deviation, { plan, codes }: UnitFacts): Guard => {
  if (codes?.operations.has(operation) === false) return { code: 'operation-unknown', operation };
  const planned = plan?.operations[operation];
  if (planned === undefined || allows.what === 'lot' || asks(planned, allows.characteristic)) return null;
  return { code: 'characteristic-unknown', characteristic: allows.characteristic };
};

const asks = ({ values }: PlannedOperation, characteristic: string): boolean =>
  values.some((value) => value.characteristic === characteristic);

/** What the plan as it was had to say, and with the deviation has not. */
const madeGood = (unit: Unit, facts: UnitFacts): readonly UnitEvent[] => {
  const { plan, applying } = facts;
  if (plan === null || applying === undefined) return [];
  const { findings } = changesUnder(unit, { from: applying.plan, to: plan }, known(unit, facts), applying);
  const isGood = (id: string): boolean => isSaidBy(findings, unit.raised[id]?.finding);
  return [
    ...unit.defects
      .filter(({ defect }) => isGood(defect))
      .flatMap(({ defect }): readonly UnitEvent[] => [
        { type: 'DefectClosed', data: { serial: unit.serial, defect, how: 'accepted' } },
        ...freed(unit, defect, 'decided'),
      ]),
    ...unit.holds
      .filter(({ hold, defect }) => defect === null && isGood(hold))
      .map(({ hold }) => released(unit.serial, hold, 'decided')),
  ];
};

const isSaidBy = (findings: readonly Finding[], finding: Finding | undefined): boolean =>
  finding !== undefined && findings.some((one) => saysTheSame(one, finding));
