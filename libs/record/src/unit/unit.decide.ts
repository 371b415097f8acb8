import { assertNever } from '@libs/kernel';
import { ask } from './unit.askings';
import type { UnitCommand } from './unit.commands';
import { closeDefect, recordDefect, recordRework, verifyDefect } from './unit.defects';
import type { UnitFacts } from './unit.facts';
import { placeHold, releaseHold } from './unit.holds';
import { affixLabel } from './unit.labels';
import { correctWork, withdrawWork } from './unit.mending';
import { moveSection, pullSection, returnSection, shipSection } from './unit.moves';
import { orderHome, orderSection, startHome, startSection } from './unit.orders';
import type { UnitDecision } from './unit.rejections';
import { signOffStation } from './unit.sign-off';
import type { Unit } from './unit.state';
import { recordWork } from './unit.work';

type Named<T extends UnitCommand['type']> = Extract<UnitCommand, { readonly type: T }>;
type WayCommand = Named<
  | 'OrderHome'
  | 'OrderSection'
  | 'StartHome'
  | 'StartSection'
  | 'MoveSection'
  | 'PullSection'
  | 'ReturnSection'
  | 'ShipSection'
>;

/** Routes: work and its mending here, the unit's way through the plant and what is wrong with it below. */
export const decide = (command: UnitCommand, unit: Unit, facts: UnitFacts): UnitDecision => {
  switch (command.type) {
    case 'Ask':
      return ask(command, unit, facts);
    case 'RecordWork':
      return recordWork(command, unit, facts);
    case 'SignOffStation':
      return signOffStation(command, unit, facts);
    case 'WithdrawWork':
      return withdrawWork(command, unit, facts);
    case 'CorrectWork':
      return correctWork(command, unit, facts);
    case 'AffixLabel':
      return affixLabel(command, unit, facts);
    case 'RecordDefect':
    case 'RecordRework':
    case 'VerifyDefect':
    case 'CloseDefect':
    case 'PlaceHold':
    case 'ReleaseHold':
      return decideTrouble(command, unit, facts);
    default:
      return decideWay(command, unit, facts);
  }
};

type TroubleCommand = Named<
  'RecordDefect' | 'RecordRework' | 'VerifyDefect' | 'CloseDefect' | 'PlaceHold' | 'ReleaseHold'
>;

const decideTrouble = (command: TroubleCommand, unit: Unit, facts: UnitFacts): UnitDecision => {
  switch (command.type) {
    case 'RecordDefect':
      return recordDefect(command, unit, facts);
    case 'RecordRework':
      return recordRework(command, unit);
    case 'VerifyDefect':
      return verifyDefect(command, unit, facts);
    case 'CloseDefect':
      return closeDefect(command, unit, facts);
    case 'PlaceHold':
      return placeHold(command, unit, facts);
    case 'ReleaseHold':
      return releaseHold(command, unit, facts);
    default:
      return assertNever(command);
  }
};

const decideWay = (command: WayCommand, unit: Unit, facts: UnitFacts): UnitDecision => {
  switch (command.type) {
    case 'OrderHome':
      return orderHome(command, unit);
    case 'OrderSection':
      return orderSection(command, unit);
    case 'StartHome':
      return startHome(command, unit, facts);
    case 'StartSection':
      return startSection(command, unit, facts);
    case 'MoveSection':
      return moveSection(command, unit, facts);
    case 'PullSection':
      return pullSection(command, unit, facts);
    case 'ReturnSection':
      return returnSection(command, unit, facts);
    case 'ShipSection':
      return shipSection(command, unit, facts);
    default:
      return assertNever(command);
  }
};
