import type { StreamKind } from '@libs/kernel';
import type { UnitCommand } from './unit.commands';
import { decide } from './unit.decide';
import type { UnitEvent } from './unit.events';
import { evolve } from './unit.evolve';
import type { UnitFacts } from './unit.facts';
import type { UnitRejection } from './unit.rejections';
import { unknownUnit } from './unit.state';
import type { Unit } from './unit.state';

type UnitKind = StreamKind<UnitCommand, Unit, UnitEvent, UnitRejection, UnitFacts>;

/** A section on its way down the line. */
export const SECTION: UnitKind = { name: 'section', initial: unknownUnit, decide, evolve };

/** A whole home: ordered, started with its first section, and put together at its site. */
export const HOME: UnitKind = { name: 'home', initial: unknownUnit, decide, evolve };
