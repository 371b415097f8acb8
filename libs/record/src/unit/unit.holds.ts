import { accept, reject } from '@libs/kernel';
import type { PlaceHold, ReleaseHold } from './unit.commands';
import { released } from './unit.consequences';
import { decidersOnly } from './unit.defects';
import type { UnitFacts } from './unit.facts';
import type { UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';
import { isKnown } from './unit.values';

/** By a person, for the plant's own reason: only a person releases it. */
export const placeHold = ({ data }: PlaceHold, unit: Unit, { codes }: UnitFacts): UnitDecision => {
  const { serial, operation, reason, hold } = data;
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial });
  if (operation !== null && codes?.operations.has(operation) === false) {
    return reject({ code: 'operation-unknown', operation });
  }
  if (codes !== null && !isKnown(codes.reasons, reason)) return reject({ code: 'reason-unknown', reason });

  const { note } = data;
  return accept({
    type: 'HoldPlaced',
    data: {
      serial: unit.serial,
      hold,
      reason,
      operation,
      characteristic: null,
      defect: null,
      ...(note === undefined ? {} : { note }),
    },
  });
};

export const releaseHold = ({ data }: ReleaseHold, unit: Unit, facts: UnitFacts): UnitDecision => {
  const { serial, hold, note } = data;
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial });
  if (!unit.holds.some((open) => open.hold === hold)) {
    return reject({ code: unit.closed.includes(hold) ? 'hold-already-released' : 'hold-unknown', hold });
  }
  const unfit = decidersOnly(facts);
  if (unfit !== null) return reject(unfit);

  return accept(released(unit.serial, hold, 'decided', note));
};
