import type { Tellings } from './told';
import { arrivalOf, sealedNote } from './telling';
import { tellUnit } from './unit-tellings';
import { unitKnowing, unitOf } from './units';
import type { Workings } from './workings';

export const tellHold =
  (workings: Workings): Tellings['hold'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'hold', body, sender, params });
    const { reason, operation } = body;
    const ref = await unitOf(workings, body.serial);
    const note = sealedNote(workings, arrival, ref);
    // Named by its key, so that sending it again finds the same hold.
    const data = { serial: ref.serial, hold: `${sender.key}-0`, reason, operation, ...note };
    return tellUnit(workings, arrival, ref, { type: 'PlaceHold', data });
  };

export const tellRelease =
  (workings: Workings): Tellings['release'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'release', body, sender, params });
    const hold = params['hold'] ?? '';
    const ref = await unitKnowing(
      workings,
      body.serial,
      ({ holds, closed }) => holds.some((open) => open.hold === hold) || closed.includes(hold),
    );
    const data = { serial: ref.serial, hold, ...sealedNote(workings, arrival, ref) };
    return tellUnit(workings, arrival, ref, { type: 'ReleaseHold', data });
  };
