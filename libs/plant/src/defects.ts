import type { Unit } from '@libs/record';
import type { Tellings } from './told';
import { arrivalOf, sealedNote } from './telling';
import { tellUnit } from './unit-tellings';
import { unitKnowing, unitOf } from './units';
import type { Workings } from './workings';

export const tellDefect =
  (workings: Workings): Tellings['defect'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'defect', body, sender, params });
    const { component, symptom, place, foundAt, operation, photos, quantity, hold, severity } = body;
    const ref = await unitOf(workings, body.serial);
    return tellUnit(workings, arrival, ref, {
      type: 'RecordDefect',
      data: {
        serial: ref.serial,
        // Named by its key, so that sending it again finds the same defect.
        defect: `${sender.key}-0`,
        class: body.class,
        component,
        symptom,
        place,
        foundAt,
        operation,
        photos,
        quantity,
        hold,
        ...(severity === undefined ? {} : { severity }),
        ...sealedNote(workings, arrival, ref),
      },
    });
  };

export const knowsDefect =
  (defect: string) =>
  (unit: Unit): boolean =>
    unit.defects.some((open) => open.defect === defect) || unit.closed.includes(defect);

const defectIn = ({ defect }: { readonly [name: string]: string }): string => defect ?? '';

export const tellRework =
  (workings: Workings): Tellings['rework'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'rework', body, sender, params });
    const defect = defectIn(params);
    const ref = await unitKnowing(workings, body.serial, knowsDefect(defect));
    const note = sealedNote(workings, arrival, ref);
    const data = { serial: ref.serial, defect, crew: body.crew, ...note };
    return tellUnit(workings, arrival, ref, { type: 'RecordRework', data });
  };

export const tellVerification =
  (workings: Workings): Tellings['verification'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'verification', body, sender, params });
    const defect = defectIn(params);
    const ref = await unitKnowing(workings, body.serial, knowsDefect(defect));
    const note = sealedNote(workings, arrival, ref);
    const data = { serial: ref.serial, defect, accepted: body.accepted, ...note };
    return tellUnit(workings, arrival, ref, { type: 'VerifyDefect', data });
  };

export const tellClosing =
  (workings: Workings): Tellings['closing'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'closing', body, sender, params });
    const defect = defectIn(params);
    const ref = await unitKnowing(workings, body.serial, knowsDefect(defect));
    const data = { serial: ref.serial, defect, how: body.how };
    return tellUnit(workings, arrival, ref, { type: 'CloseDefect', data });
  };
