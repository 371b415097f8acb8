import type { CompiledPlan, Finding } from '@libs/judge';
import { judgeAsking } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { Ask } from './unit.commands';
import type { UnitFacts } from './unit.facts';
import { judgingOf, operationGuard } from './unit.guards';
import { known } from './unit.judging';
import type { UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';
import { placesGuard } from './unit.values';

/** May I? Cleared or refused, with all there is to say; both are on record. */
export const ask = ({ data }: Ask, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const { plan, codes } = ready.judging;
  const unfit = operationGuard(unit, data.operation, ready.judging) ?? placesGuard(data.except, codes);
  if (unfit !== null) return reject(unfit);

  const { operation, except } = data;
  const findings = [
    ...judgeAsking(plan, known(unit, facts), { operation, except }),
    ...stationHeld(operation, facts),
    ...leftAlready(operation, unit, plan),
  ];
  const isRefused = findings.some(({ grade }) => grade === 'refuse');
  return accept({
    type: isRefused ? 'AskingRefused' : 'AskingCleared',
    data: { serial: unit.serial, operation, except, findings },
    revision: plan.revision,
    planDigest: plan.digest,
  });
};

/** What has left the plant is nobody's here to clear; at its site it is worked on all the same. */
const leftAlready = (operation: string, unit: Unit, plan: CompiledPlan): readonly Finding[] => {
  const station = plan.operations[operation]?.station ?? null;
  const atSite = plan.stations.some(({ id, kind }) => id === station && kind === 'site');
  if (unit.kind !== 'section' || unit.stage !== 'shipped' || atSite) return [];
  return [
    {
      rule: 'shipped-already',
      grade: 'refuse',
      class: 'record',
      operation,
      station,
      entry: operation,
      source: { kind: 'practice', reference: '', row: '' },
    },
  ];
};

/** A station that is held starts nothing until it is released. */
const stationHeld = (operation: string, { heldStations }: UnitFacts): readonly Finding[] =>
  heldStations.map(({ station, hold, reason }) => ({
    rule: 'held',
    grade: 'refuse',
    class: 'record',
    operation,
    station,
    entry: operation,
    recorded: reason,
    hold,
    source: { kind: 'practice', reference: '', row: '' },
  }));
