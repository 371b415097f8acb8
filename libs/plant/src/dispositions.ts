import type { Tellings } from './told';
import { arrivalOf, sealedNote, sealedText } from './telling';
import { tellUnit } from './unit-tellings';
import { unitKnowing, unitOf } from './units';
import { knowsDefect } from './defects';
import type { Workings } from './workings';

export const tellCause =
  (workings: Workings): Tellings['cause'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'cause', body, sender, params });
    const defect = params['defect'] ?? '';
    const ref = await unitKnowing(workings, body.serial, knowsDefect(defect));
    const note = sealedText(workings, arrival, { ref, field: 'note', text: body.note });
    return tellUnit(workings, arrival, ref, {
      type: 'ReviseCause',
      data: { serial: ref.serial, defect, operation: body.operation, note },
    });
  };

export const tellDisposition =
  (workings: Workings): Tellings['disposition'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'disposition', body, sender, params });
    const defect = params['defect'] ?? '';
    const ref = await unitKnowing(workings, body.serial, knowsDefect(defect));
    const { disposition, detail, approval: text } = body;
    const approval =
      text === undefined ? {} : { approval: sealedText(workings, arrival, { ref, field: 'approval', text }) };
    const note = sealedNote(workings, arrival, ref);
    return tellUnit(workings, arrival, ref, {
      type: 'DispositionDefect',
      data: { serial: ref.serial, defect, disposition, detail, ...approval, ...note },
    });
  };

export const tellPunchList =
  (workings: Workings): Tellings['punchList'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'punchList', body, sender, params });
    const { foundAt, items } = body;
    const ref = await unitOf(workings, body.serial);
    return tellUnit(workings, arrival, ref, {
      type: 'RecordPunchList',
      data: { serial: ref.serial, foundAt, items },
    });
  };

export const tellPunchSignature =
  (workings: Workings): Tellings['punchSignature'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'punchSignature', body, sender, params });
    const { defects } = body;
    const ref = await unitOf(workings, body.serial);
    const note = sealedNote(workings, arrival, ref);
    return tellUnit(workings, arrival, ref, {
      type: 'SignPunchList',
      data: { serial: ref.serial, defects, ...note },
    });
  };

export const tellCoverOpening =
  (workings: Workings): Tellings['coverOpening'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'coverOpening', body, sender, params });
    const { operation, places, also, defect } = body;
    const ref = await unitOf(workings, body.serial);
    const note = sealedNote(workings, arrival, ref);
    return tellUnit(workings, arrival, ref, {
      type: 'OpenCover',
      data: { serial: ref.serial, operation, places, also, defect, ...note },
    });
  };
