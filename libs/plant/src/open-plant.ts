import { partOf } from '@libs/ledger';
import { PLANT, RULEBOOK } from '@libs/record';
import { tellAsking } from './askings';
import { tellCorrection, tellWrongSerial } from './corrections';
import { tellClosing, tellDefect, tellRework, tellVerification } from './defects';
import { familiesIn } from './families';
import { tellHold, tellRelease } from './holds';
import { tellHome, tellStart } from './homes';
import { calibrate } from './instruments';
import { tellLabel } from './labels';
import { tellLot, tellMounting } from './lots';
import { tellMove, tellPull, tellReturn, tellShipment } from './moves';
import { nameBook } from './names';
import { newsFrom } from './news';
import { enroll, leave } from './people';
import type { Plant, Tellings } from './plant';
import { plansOf } from './plans';
import { readPeople, rosterOf } from './roster';
import { issueRevision } from './rulebook';
import { tellSignOff } from './sign-offs';
import { arrivalOf, askLedger } from './telling';
import { tellWork } from './work';
import type { PlantParts, Workings } from './workings';
import { questionsOf } from './questions';

/** The plant as plain functions, over a ledger that is open. */
export const openPlant = async (parts: PlantParts): Promise<Plant> => {
  const { ledger, reader, sealing, views, clock } = parts;
  const plans = plansOf();
  const roster = rosterOf(sealing);
  const names = nameBook(plans, roster.nameOf);
  const workings: Workings = { ...parts, plans, roster, names, families: familiesIn(ledger) };

  for (const issued of (await ledger.state(RULEBOOK, 'rulebook')).revisions) plans.learn(issued);
  await readPeople(ledger, reader, roster.learn);

  return {
    tell: tellingsOf(workings),
    asks: questionsOf({ ledger, views, plans, names, unsealed: sealing.unseal, clock }),
    open: openLedgerOf(workings),
    issueRevision: issueRevision(workings),
    enroll: enroll(workings),
    leave: leave(workings),
    calibrate: calibrate(workings),
    people: () => Promise.resolve(roster.people()),
    news: (after) => newsFrom(workings, after),
    head: () => ledger.head(),
    rebuild: parts.rebuild,
    close: () => ledger.close(),
  };
};

const tellingsOf = (workings: Workings): Tellings => ({
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
});

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
