import type { Tellings } from './plant';
import { arrivalOf, sealedNote } from './telling';
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

export const tellDestination =
  (workings: Workings): Tellings['destination'] =>
  (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'destination', body, sender, params });
    const { home, destination } = body;
    const ref = { kind: 'home', serial: home } as const;
    const data = { home, destination, ...sealedNote(workings, arrival, ref) };
    return tellUnit(workings, arrival, ref, { type: 'SetDestination', data });
  };
