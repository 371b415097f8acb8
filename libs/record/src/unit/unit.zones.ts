import type { Finding } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { MindDestination } from './unit.change.commands';
import { holdOf, released } from './unit.consequences';
import type { HoldPlaced, UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';
import type { UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';

const OUTSIDE = 'destination-outside-zones';

/** A home bound for a county its design was not made for is held; bound elsewhere, it is not. */
export const mindDestination = ({ data }: MindDestination, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  if (unit.stage === 'shipped') return accept();

  const said = facts.outsideZones ?? [];
  const over = unit.holds.filter(({ hold }) => isOver(unit.raised[hold]?.finding, said));
  return accept<UnitEvent>(
    ...over.map(({ hold }) => released(unit.serial, hold, 'satisfied')),
    ...heldOutside(unit, facts, over.length),
  );
};

/** The holds that a unit bound outside its zones gets, where it has none for the same county yet. */
export const heldOutside = (
  unit: Unit,
  { outsideZones = [], idBase }: UnitFacts,
  before: number,
): readonly HoldPlaced[] =>
  outsideZones
    .filter((finding) => !unit.holds.some(({ hold }) => isSame(unit.raised[hold]?.finding, finding)))
    .map((finding, index) => {
      const placed = holdOf(unit.serial, finding, { hold: `${idBase}-${before + index}`, defect: null });
      // Of no operation: it is the home that may not go there.
      return { ...placed, data: { ...placed.data, operation: null } };
    });

const isOver = (raised: Finding | undefined, said: readonly Finding[]): boolean =>
  raised?.rule === OUTSIDE && !said.some((finding) => isSame(raised, finding));

const isSame = (one: Finding | undefined, other: Finding): boolean =>
  one?.rule === other.rule &&
  one.characteristic === other.characteristic &&
  one.required === other.required &&
  one.places?.join() === other.places?.join();
