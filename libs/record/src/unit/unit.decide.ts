import { ask } from './unit.askings';
import type { UnitCommand } from './unit.commands';
import { changeOrder } from './unit.changed-order';
import { openCover } from './unit.covers';
import { closeDefect, recordDefect, recordRework, verifyDefect } from './unit.defects';
import { approveDeviation } from './unit.deviations';
import { dispositionDefect, reviseCause } from './unit.dispositions';
import type { UnitFacts } from './unit.facts';
import { placeHold, releaseHold } from './unit.holds';
import { freeFromLot, holdForLot } from './unit.lot-holds';
import { recheckHolds } from './unit.recheck';
import { mindDestination } from './unit.zones';
import { liftRedTag, placeRedTag, seeStage } from './unit.agency';
import { affixLabel, replaceLabel } from './unit.labels';
import { correctWork, withdrawWork } from './unit.mending';
import { moveSection, pullSection, returnSection, setDestination, shipSection } from './unit.moves';
import { orderHome, orderSection, startHome, startSection } from './unit.orders';
import { recordPunchList, signPunchList } from './unit.punch-lists';
import type { UnitDecision } from './unit.rejections';
import { applyRevision } from './unit.revision';
import { signOffStation } from './unit.sign-off';
import type { Unit } from './unit.state';
import { recordWork } from './unit.work';

type Decide<C> = (command: C, unit: Unit, facts: UnitFacts) => UnitDecision;
type Named<T extends UnitCommand['type']> = Extract<UnitCommand, { readonly type: T }>;

/** In the order a unit lives. A command without its function does not compile. */
const FUNCTIONS: { readonly [T in UnitCommand['type']]: Decide<Named<T>> } = {
  OrderHome: orderHome,
  OrderSection: orderSection,
  StartHome: startHome,
  StartSection: startSection,
  Ask: ask,
  RecordWork: recordWork,
  SignOffStation: signOffStation,
  WithdrawWork: withdrawWork,
  CorrectWork: correctWork,
  RecordDefect: recordDefect,
  RecordRework: recordRework,
  VerifyDefect: verifyDefect,
  CloseDefect: closeDefect,
  ReviseCause: reviseCause,
  RecordPunchList: recordPunchList,
  SignPunchList: signPunchList,
  DispositionDefect: dispositionDefect,
  OpenCover: openCover,
  SeeStage: seeStage,
  PlaceRedTag: placeRedTag,
  LiftRedTag: liftRedTag,
  PlaceHold: placeHold,
  ReleaseHold: releaseHold,
  MoveSection: moveSection,
  PullSection: pullSection,
  ReturnSection: returnSection,
  AffixLabel: affixLabel,
  ReplaceLabel: replaceLabel,
  SetDestination: setDestination,
  ApplyRevision: applyRevision,
  ChangeOrder: changeOrder,
  ApproveDeviation: approveDeviation,
  MindDestination: mindDestination,
  HoldForLot: holdForLot,
  FreeFromLot: freeFromLot,
  RecheckHolds: recheckHolds,
  ShipSection: shipSection,
};

/** Routes, and no more. */
export const decide: Decide<UnitCommand> = (command, unit, facts) =>
  functionFor(command)(command, unit, facts);

/** The table pairs each command with its own function; the compiler has checked that where it is written. */
const functionFor = ({ type }: UnitCommand): Decide<UnitCommand> => FUNCTIONS[type] as Decide<UnitCommand>;
