import { workAnswer } from './answers';
import type { Tellings } from './told';
import { arrivalOf, arrived, askLedger, rejected, sealedNote, unitPart } from './telling';
import { tellUnit } from './unit-tellings';
import { sectionOf } from './units';
import type { Workings } from './workings';

export const tellMove =
  (workings: Workings): Tellings['move'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'move', body, sender, params });
    const ref = await sectionOf(workings, body.serial);
    const data = { serial: ref.serial, to: body.to };
    return tellUnit(workings, arrival, ref, { type: 'MoveSection', data });
  };

export const tellPull =
  (workings: Workings): Tellings['pull'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'pull', body, sender, params });
    const ref = await sectionOf(workings, body.serial);
    const note = sealedNote(workings, arrival, ref);
    const data = { serial: ref.serial, reason: body.reason, ...note };
    return tellUnit(workings, arrival, ref, { type: 'PullSection', data });
  };

export const tellReturn =
  (workings: Workings): Tellings['return'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'return', body, sender, params });
    const ref = await sectionOf(workings, body.serial);
    const data = { serial: ref.serial, to: body.to };
    return tellUnit(workings, arrival, ref, { type: 'ReturnSection', data });
  };

export const tellShipment =
  (workings: Workings): Tellings['shipment'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'shipment', body, sender, params });
    const ref = await sectionOf(workings, body.serial);
    const data = { serial: ref.serial, ...sealedNote(workings, arrival, ref) };
    return tellUnit(workings, arrival, ref, { type: 'ShipSection', data });
  };

/** Where it goes is the home's; whether its sections may go there is told on each of them. */
export const tellDestination =
  (workings: Workings): Tellings['destination'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'destination', body, sender, params });
    const { home, destination } = body;
    const ref = { kind: 'home', serial: home } as const;
    const data = { home, destination, ...sealedNote(workings, arrival, ref) };
    const sections = (await workings.families.of(home))?.sections ?? [];
    const outcome = await askLedger(workings, arrival, [
      unitPart(workings, ref, { type: 'SetDestination', data }, arrived(arrival)),
      ...sections.map((serial) =>
        unitPart(
          workings,
          { kind: 'section', serial },
          { type: 'MindDestination', data: { serial } },
          { ...arrived(arrival), zones: { destination }, part: `-${serial}` },
        ),
      ),
    ]);
    return outcome.ok
      ? { ok: true, answer: await workAnswer(workings, outcome, ref) }
      : rejected(outcome.rejection, body);
  };
