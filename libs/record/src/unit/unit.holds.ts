import { accept, reject } from '@libs/kernel';
import type { PlaceHold, ReleaseHold } from './unit.commands';
import { released } from './unit.consequences';
import { decidersOnly } from './unit.defects';
import type { UnitFacts } from './unit.facts';
import type { UnitDecision } from './unit.rejections';
import { redTagHold } from './unit.released';
import type { Unit } from './unit.state';
import { isKnown } from './unit.values';

/** Placed because of what was found on another section. Needs no reason code of the plant's own. */
export const CONTAINED = 'contained';

/** By a person, for the plant's own reason: only a person releases it. */
export const placeHold = ({ data }: PlaceHold, unit: Unit, { codes }: UnitFacts): UnitDecision => {
  const { serial, operation, reason, hold } = data;
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial });
  if (operation !== null && codes?.operations.has(operation) === false) {
    return reject({ code: 'operation-unknown', operation });
  }
  if (codes !== null && reason !== CONTAINED && !isKnown(codes.reasons, reason))
    return reject({ code: 'reason-unknown', reason });

  const { note, containment } = data;
  return accept({
    type: 'HoldPlaced',
    data: {
      serial: unit.serial,
      hold,
      reason,
      operation,
      characteristic: null,
      defect: null,
      ...(containment === undefined ? {} : { containment }),
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
  if (unit.redTags.some((tag) => redTagHold(tag) === hold)) {
    return reject({ code: 'red-tag-needs-agency', hold });
  }
  const unfit = decidersOnly(facts);
  if (unfit !== null) return reject(unfit);

  return accept(released(unit.serial, hold, 'decided', note));
};
