import { partOf } from '@libs/ledger';
import { PLANT, RULEBOOK } from '@libs/record';
import {
  tellObservation,
  tellObservationAnswer,
  tellObservationClosing,
  tellRedTag,
  tellRedTagLifting,
  tellStageSeen,
  tellVisit,
} from './agency';
import { tellAsking } from './askings';
import { chartTellings } from './charts';
import { claimsFile } from './claims/claims-file';
import { tellCauseConfirmation } from './claims/confirming';
import { determinationTellings } from './claims/determining';
import { exposureFile } from './claims/exposure-file';
import { gatheringFrom } from './claims/gathering';
import { claimTellings } from './claims/tellings';
import { tellContainedLook, tellContainment } from './containments';
import { tellCorrection, tellWrongSerial } from './corrections';
import { tellClosing, tellDefect, tellRework, tellVerification } from './defects';
import {
  tellCause,
  tellCoverOpening,
  tellDisposition,
  tellPunchList,
  tellPunchSignature,
} from './dispositions';
import { equipmentTellings } from './equipment';
import { familiesIn } from './families';
import { tellHold, tellRelease } from './holds';
import { tellHome, tellStart } from './homes';
import { calibrate } from './instruments';
import { tellLabel, tellLabelReclaim, tellLabelReplacement, tellLabelSupply, tellLabelVoid } from './labels';
import { tellLot, tellMounting } from './lots';
import { tellDestination, tellMove, tellPull, tellReturn, tellShipment } from './moves';
import { nameBook } from './names';
import { newsFrom } from './news';
import { enroll, erase, forgetErased, leave } from './people';
import type { Plant } from './plant';
import type { Tellings } from './told';
import { alarmsOpened } from './alarms';
import { plansOf } from './plans';
import { orderChangeTellings } from './order-changes';
import { plantProof } from './proof';
import { packetOf } from './packets/packet';
import { packetHomeOf } from './packets/packet-home';
import { rulebookDesk } from './revisions/desk';
import { photosOf } from './photos';
import { readPeople, rosterOf } from './roster';
import { issueRevision } from './rulebook';
import { tellSignOff } from './sign-offs';
import { tellStationHold, tellStationRelease } from './station-holds';
import { arrivalOf, askLedger } from './telling';
import { tellWork } from './work';
import type { PlantParts, Workings } from './workings';
import { eventsMentioning, quarantinedLots, questionsOf, streamsOf } from './questions';

/** The plant as plain functions, over a ledger that is open. */
export const openPlant = async (parts: PlantParts): Promise<Plant> => {
  const { ledger, reader, sealing, proving } = parts;
  const plans = plansOf();
  const roster = rosterOf(sealing);
  const names = nameBook(plans, roster.nameOf);
  const workings: Workings = { ...parts, plans, roster, names, families: familiesIn(ledger) };

  for (const issued of (await ledger.state(RULEBOOK, 'rulebook')).revisions) plans.learn(issued);
  await readPeople(ledger, reader, roster.learn);
  forgetErased({ roster, sealing });

  const asked = askedOf(parts, { plans, names });

  const proof = plantProof({ ledger, reader, proving });
  const homeAt = packetHomeOf(asked);

  const tell = {
    ...tellingsOf(workings),
    ...claimTellings(workings),
    ...determinationTellings(workings, asked),
    causeConfirmation: tellCauseConfirmation(workings, asked),
  };

  return {
    tell,
    proof,
    photos: photosOf(parts.photos),
    packet: packetOf({ proof, homeAt, photos: parts.photos }),
    asks: questionsOf(asked),
    rulebook: rulebookDesk(workings, asked),
    packetHome: homeAt,
    alarmsOpened: () => alarmsOpened(asked, ledger),
    open: openLedgerOf(workings),
    issueRevision: issueRevision(workings),
    enroll: enroll(workings),
    leave: leave(workings),
    erase: erase(workings),
    calibrate: calibrate(workings),
    ...claimFiles(tell, asked, sealing),
    people: () => Promise.resolve(roster.people()),
    news: (after) => newsFrom(workings, after),
    tail: tailOf(workings),
    head: () => ledger.head(),
    writes: () => ledger.writes(),
    rebuild: parts.rebuild,
    close: () => ledger.close(),
  };
};

const tailOf = ({ ledger, names }: Workings): Plant['tail'] => ({
  ledger: ledger.id,
  head: () => ledger.head(),
  after: (position, limit) => ledger.after(position, limit),
  heads: ledger.news,
  names,
});

/** What questions are answered from. */
const askedOf = (
  { ledger, reader, sealing, views, clock }: PlantParts,
  { plans, names }: Pick<Workings, 'plans' | 'names'>,
) => ({
  ledger,
  views,
  plans,
  names,
  unsealed: sealing.unseal,
  streamsOf: streamsOf(reader),
  mentioning: eventsMentioning(reader),
  gathering: gatheringFrom(reader),
  quarantined: quarantinedLots(ledger, reader),
  clock,
});

const claimFiles = (
  tell: Pick<Plant['tell'], 'complaint'>,
  asked: Parameters<typeof exposureFile>[0],
  sealing: PlantParts['sealing'],
): Pick<Plant, 'claimsFile' | 'exposureFile' | 'statedReason'> => ({
  claimsFile: claimsFile(tell.complaint),
  exposureFile: exposureFile(asked),
  statedReason: statedReason(sealing),
});

const statedReason = ({ seal, unseal }: PlantParts['sealing']): Plant['statedReason'] => {
  const place = (account: string) => ({ stream: `account/${account}`, field: 'reason' });
  return {
    seal: (account, reason) => seal(account, place(account), reason),
    read: (account, sealed) => unseal(sealed, place(account)),
  };
};

const tellingsOf = (
  workings: Workings,
): Omit<
  Tellings,
  | keyof ReturnType<typeof claimTellings>
  | keyof ReturnType<typeof determinationTellings>
  | 'causeConfirmation'
> => ({
  work: tellWork(workings),
  asking: tellAsking(workings),
  signOff: tellSignOff(workings),
  wrongSerial: tellWrongSerial(workings),
  correction: tellCorrection(workings),
  defect: tellDefect(workings),
  rework: tellRework(workings),
  verification: tellVerification(workings),
  closing: tellClosing(workings),
  hold: tellHold(workings),
  release: tellRelease(workings),
  move: tellMove(workings),
  pull: tellPull(workings),
  return: tellReturn(workings),
  shipment: tellShipment(workings),
  label: tellLabel(workings),
  start: tellStart(workings),
  home: tellHome(workings),
  lot: tellLot(workings),
  mounting: tellMounting(workings),
  ...releaseTellings(workings),
  ...equipmentTellings(workings),
  ...orderChangeTellings(workings),
  ...chartTellings(workings),
});

const releaseTellings = (workings: Workings): Pick<Tellings, ReleaseTelling> => ({
  cause: tellCause(workings),
  disposition: tellDisposition(workings),
  punchList: tellPunchList(workings),
  punchSignature: tellPunchSignature(workings),
  coverOpening: tellCoverOpening(workings),
  stationHold: tellStationHold(workings),
  stationRelease: tellStationRelease(workings),
  visit: tellVisit(workings),
  stageSeen: tellStageSeen(workings),
  redTag: tellRedTag(workings),
  redTagLifting: tellRedTagLifting(workings),
  observation: tellObservation(workings),
  observationAnswer: tellObservationAnswer(workings),
  observationClosing: tellObservationClosing(workings),
  labelReplacement: tellLabelReplacement(workings),
  labelSupply: tellLabelSupply(workings),
  labelVoid: tellLabelVoid(workings),
  labelReclaim: tellLabelReclaim(workings),
  containment: tellContainment(workings),
  containedLook: tellContainedLook(workings),
  destination: tellDestination(workings),
});

/** From found to released: dispositions, the inspection agency, labels and containment. */
type ReleaseTelling =
  | 'cause'
  | 'disposition'
  | 'punchList'
  | 'punchSignature'
  | 'coverOpening'
  | 'stationHold'
  | 'stationRelease'
  | 'visit'
  | 'stageSeen'
  | 'redTag'
  | 'redTagLifting'
  | 'observation'
  | 'observationAnswer'
  | 'observationClosing'
  | 'labelReplacement'
  | 'labelSupply'
  | 'labelVoid'
  | 'labelReclaim'
  | 'containment'
  | 'containedLook'
  | 'destination';

const openLedgerOf =
  (workings: Workings): Plant['open'] =>
  async (name, zone, demonstration, sender) => {
    const body = { via: 'import' as const, name, zone, demonstration };
    const outcome = await askLedger(workings, arrivalOf(workings, { route: 'open', body, sender }), [
      partOf({
        kind: PLANT,
        id: 'plant',
        command: { type: 'OpenPlant', data: { name, zone, demonstration } },
        facts: () => ({}),
      }),
    ]);
    if (!outcome.ok) throw new Error(`The plant was not opened: ${outcome.rejection.code}`);
  };
