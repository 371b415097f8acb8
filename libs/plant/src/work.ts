import { workAnswer } from './answers';
import type { Tellings } from './told';
import { recheckParts } from './rechecks';
import { arrivalOf, arrived, askLedger, rejected, sealedNote, unitPart } from './telling';
import { unitFor } from './units';
import type { Workings } from './workings';

/** "It is done": always recorded. */
export const tellWork =
  (workings: Workings): Tellings['work'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'work', body, sender, params });
    const { operation, proof, except, values, lots, instrument, photos, crew } = body;
    const ref = await unitFor(workings, body.serial, operation);
    const note = sealedNote(workings, arrival, ref);
    const data = {
      serial: ref.serial,
      operation,
      proof,
      except,
      values,
      lots,
      instrument,
      photos,
      crew,
      ...note,
    };

    const outcome = await askLedger(workings, arrival, [
      unitPart(
        workings,
        ref,
        { type: 'RecordWork', data },
        {
          ...arrived(arrival),
          operations: () => [operation],
          lots,
          instrument,
        },
      ),
      ...(await recheckParts(workings, arrival, ref, { operations: [operation], proof })),
    ]);
    return outcome.ok
      ? { ok: true, answer: await workAnswer(workings, outcome, ref) }
      : rejected(outcome.rejection, body);
  };
