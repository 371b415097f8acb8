import type { Proof } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { RecordWork } from './unit.commands';
import { entered } from './unit.entering';
import type { Told } from './unit.entering';
import type { UnitFacts } from './unit.facts';
import { judgingOf, operationGuard } from './unit.guards';
import type { Judging } from './unit.guards';
import { lotsFor } from './unit.lots';
import type { Guard, UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';
import { first, placesGuard, valuesGuard } from './unit.values';

export const recordWork = ({ data }: RecordWork, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const { plan, codes } = ready.judging;

  const unfit =
    operationGuard(unit, data.operation, ready.judging) ??
    placesGuard(data.except, codes) ??
    valuesGuard(plan.operations[data.operation], data.values, codes) ??
    usedGuard(data, facts) ??
    reconstructionGuard(data.proof, facts);
  if (unfit !== null) return reject(unfit);

  if (data.movedFrom !== undefined) return recordMoved(data, unit, ready.judging);

  const told = { ...data, lots: lotsFor(plan.operations[data.operation], facts) };
  return accept(...entered(unit, told, ready.judging, 0));
};

/** Put right after a wrong serial: the entry comes as it stood on the other one. */
const recordMoved = (data: RecordWork['data'], unit: Unit, judging: Judging): UnitDecision => {
  const { moved, scanned } = judging.facts;
  const from = data.movedFrom?.serial;
  if (from === data.serial) return reject({ code: 'same-serial', serial: data.serial });
  if (moved === null || from === undefined)
    return reject({ code: 'work-not-recorded', operation: data.operation });

  const { done, evidence } = moved;
  const told: Told = {
    operation: data.operation,
    proof: done.proof,
    except: done.except,
    values: done.values,
    lots: scanned,
    instrument: evidence.instrument,
    photos: evidence.photos,
    crew: done.crew,
    movedFrom: { serial: from, position: done.position },
    ...(data.note === undefined ? {} : { note: data.note }),
  };
  return accept(...entered(unit, told, judging, 0));
};

const usedGuard = ({ lots, instrument }: RecordWork['data'], facts: UnitFacts): Guard => {
  const unknownLot = first(lots, (lot) =>
    facts.scanned.some((scanned) => scanned.lot === lot) ? null : { code: 'lot-unknown', lot },
  );
  if (unknownLot !== null || instrument === null || facts.instrument !== null) return unknownLot;

  return { code: 'instrument-unknown', instrument };
};

const reconstructionGuard = (proof: Proof, { signer }: UnitFacts): Guard =>
  proof === 'reconstructed' && !signer.roles.includes('quality-manager')
    ? { code: 'not-allowed', actor: signer.actor, needs: 'quality-manager' }
    : null;
