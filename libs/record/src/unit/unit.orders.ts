import { accept, reject } from '@libs/kernel';
import type { OrderHome, OrderSection, StartHome, StartSection } from './unit.commands';
import type { UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';
import type { UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';
import { isKnown } from './unit.values';
import { heldOutside } from './unit.zones';

export const orderHome = ({ data }: OrderHome, unit: Unit): UnitDecision =>
  unit.kind === 'unknown'
    ? accept({ type: 'HomeOrdered', data })
    : reject({ code: 'serial-already-ordered', serial: data.home });

export const orderSection = ({ data }: OrderSection, unit: Unit): UnitDecision =>
  unit.kind === 'unknown'
    ? accept({ type: 'SectionOrdered', data })
    : reject({ code: 'serial-already-ordered', serial: data.serial });

/** The first of its sections enters the line; for those that follow, there is nothing to record. */
export const startHome = ({ data }: StartHome, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.home });
  if (unit.revision !== null) return accept();
  if (facts.revisionInForce === null) return reject({ code: 'no-revision-in-force' });

  return accept({ type: 'HomeStarted', data: { home: data.home, revision: facts.revisionInForce } });
};

/** All sections of a home are judged by one revision: the one it started with. */
export const startSection = ({ data }: StartSection, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  if (unit.stage !== 'ordered') return reject({ code: 'section-already-started', serial: data.serial });

  const revision = facts.homeRevision ?? facts.revisionInForce;
  if (revision === null || facts.codes === null) return reject({ code: 'no-revision-in-force' });
  if (!isKnown(facts.codes.stations, data.at)) return reject({ code: 'station-unknown', station: data.at });

  return accept<UnitEvent>(
    { type: 'SectionStarted', data: { serial: data.serial, home: unit.home, at: data.at, revision } },
    ...heldOutside(unit, facts, 1),
  );
};
