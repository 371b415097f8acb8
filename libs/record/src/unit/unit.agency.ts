import { accept, reject } from '@libs/kernel';
import type { LiftRedTag, PlaceRedTag, SeeStage } from './unit.release.commands';
import { agencyOnly } from './unit.defects';
import type { UnitFacts } from './unit.facts';
import type { UnitDecision } from './unit.rejections';
import { redTagHold } from './unit.released';
import type { Unit } from './unit.state';
import { isKnown } from './unit.values';

/** What only the inspection agency says: what it saw, and what it has tagged. */
export const seeStage = ({ data }: SeeStage, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  const { station } = data;
  if (facts.codes !== null && !isKnown(facts.codes.stations, station)) {
    return reject({ code: 'station-unknown', station });
  }
  const unfit = agencyOnly(facts);
  return unfit === null ? accept({ type: 'StageSeen', data }) : reject(unfit);
};

export const placeRedTag = ({ data }: PlaceRedTag, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  const { tag, defect } = data;
  const unfit = agencyOnly(facts);
  if (unfit !== null) return reject(unfit);
  if (unit.redTags.includes(tag)) return reject({ code: 'red-tag-on-already', tag });
  if (defect !== null && !unit.defects.some((open) => open.defect === defect)) {
    return reject({ code: 'defect-unknown', defect });
  }
  return accept({ type: 'RedTagPlaced', data });
};

export const liftRedTag = ({ data }: LiftRedTag, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  const { tag } = data;
  const unfit = agencyOnly(facts);
  if (unfit !== null) return reject(unfit);
  if (unit.redTags.includes(tag)) return accept({ type: 'RedTagLifted', data });

  const hold = redTagHold(tag);
  return unit.closed.includes(hold)
    ? reject({ code: 'hold-already-released', hold })
    : reject({ code: 'red-tag-unknown', tag });
};
