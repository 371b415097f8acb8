import { accept, reject } from '@libs/kernel';
import type { DispositionDefect, ReviseCause } from './unit.release.commands';
import { chargedTo, freed, openDefect } from './unit.defects';
import type { UnitEvent } from './unit.events';
import type { Codes, UnitFacts } from './unit.facts';
import { judgingOf } from './unit.guards';
import type { Guard, UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';

/** Who decides what becomes of a nonconformance, and what caused it. */
const managersOnly = ({ signer }: UnitFacts): Guard =>
  signer.roles.some((role) => role === 'quality-manager' || role === 'administrator')
    ? null
    : { code: 'not-allowed', actor: signer.actor, needs: 'quality-manager' };

/** Also of a defect that is over: yields are charged to the cause, whenever it becomes known. */
export const reviseCause = ({ data }: ReviseCause, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const { defect, operation, note } = data;
  const open = unit.defects.find((each) => each.defect === defect);
  const unfit = causeGuard(data, unit, ready.judging.codes) ?? managersOnly(facts);
  if (unfit !== null) return reject(unfit);
  if (open?.operation === operation) return accept();

  return accept({
    type: 'CauseRevised',
    data: {
      serial: unit.serial,
      defect,
      from: open?.operation ?? null,
      operation,
      ...chargedTo(operation, unit, ready.judging),
      note,
    },
  });
};

const causeGuard = ({ defect, operation }: ReviseCause['data'], unit: Unit, codes: Codes): Guard => {
  const isKnown = unit.defects.some((open) => open.defect === defect) || unit.closed.includes(defect);
  if (!isKnown) return { code: 'defect-unknown', defect };
  return operation === null || codes.operations.has(operation)
    ? null
    : { code: 'operation-unknown', operation };
};

export const dispositionDefect = (
  { data }: DispositionDefect,
  unit: Unit,
  facts: UnitFacts,
): UnitDecision => {
  const sought = openDefect(unit, data.serial, data.defect);
  if (!sought.ok) return sought;
  const { defect, class: ofClass } = sought.defect;
  if (ofClass !== 'nonconformance') return reject({ code: 'disposition-not-needed', defect });
  const unfit = managersOnly(facts) ?? formGuard(data) ?? ownWorkGuard(data, unit, facts);
  if (unfit !== null) return reject(unfit);

  const said: UnitEvent = { type: 'DefectDispositioned', data };
  return data.disposition === 'use-as-is' ? accept(said, ...usedAsIs(unit, defect)) : accept(said);
};

/** A repair is done to a detail somebody has approved, and what stays as it is has a name under it. */
const formGuard = ({ defect, disposition, detail, approval }: DispositionDefect['data']): Guard => {
  if (disposition === 'repair' && detail === null) return { code: 'detail-needed', defect };
  return disposition === 'use-as-is' && approval === undefined ? { code: 'approval-needed', defect } : null;
};

/** Nobody accepts their own deviation. */
const ownWorkGuard = (
  { defect, disposition }: DispositionDefect['data'],
  unit: Unit,
  { signer }: UnitFacts,
): Guard => {
  const operation = unit.defects.find((open) => open.defect === defect)?.operation ?? null;
  const isOwn = operation !== null && unit.work[operation]?.actor === signer.actor;
  return disposition === 'use-as-is' && isOwn ? { code: 'verified-by-own-hand', defect } : null;
};

const usedAsIs = (unit: Unit, defect: string): readonly UnitEvent[] => [
  { type: 'DefectClosed', data: { serial: unit.serial, defect, how: 'accepted' } },
  ...freed(unit, defect, 'decided'),
];
