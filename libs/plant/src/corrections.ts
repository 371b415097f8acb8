import { workAnswer } from './answers';
import type { Tellings } from './told';
import { arrivalOf, arrived, askLedger, rejected, sealedNote, unitPart } from './telling';
import { unitFor } from './units';
import type { Workings } from './workings';

/** The plant's reason code for an entry that belongs to another serial. */
const WRONG_SERIAL = 'wrong-serial';

/**
 * Out of one history and into the other, in one commit. The entry's new home comes first: it reads the entry while
 * it still stands on the other.
 */
export const tellWrongSerial =
  (workings: Workings): Tellings['wrongSerial'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'wrongSerial', body, sender, params });
    const { operation } = body;
    const from = await unitFor(workings, body.recordedOn, operation);
    const to = await unitFor(workings, body.belongsTo, operation);

    const outcome = await askLedger(workings, arrival, [
      unitPart(
        workings,
        to,
        {
          type: 'RecordWork',
          data: {
            serial: to.serial,
            operation,
            ...TAKEN_OVER,
            movedFrom: { serial: from.serial, position: 0 },
            ...sealedNote(workings, arrival, to),
          },
        },
        { ...arrived(arrival), moves: { from, operation } },
      ),
      unitPart(
        workings,
        from,
        {
          type: 'WithdrawWork',
          data: {
            serial: from.serial,
            operation,
            reason: WRONG_SERIAL,
            movedTo: to.serial,
            ...sealedNote(workings, arrival, from),
          },
        },
        { ...arrived(arrival), part: '-from' },
      ),
    ]);
    return outcome.ok
      ? { ok: true, answer: await workAnswer(workings, outcome, to) }
      : rejected(outcome.rejection, body);
  };

/** All else comes from the entry as it stands, read inside the writer. */
const TAKEN_OVER = {
  proof: 'signed',
  except: [],
  values: [],
  lots: [],
  instrument: null,
  photos: [],
  crew: null,
} as const;

/** What was written is put right; the old values stay in sight. */
export const tellCorrection =
  (workings: Workings): Tellings['correction'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'correction', body, sender, params });
    const { operation, except, values, reason } = body;
    const ref = await unitFor(workings, body.serial, operation);
    const data = {
      serial: ref.serial,
      operation,
      except,
      values,
      reason,
      ...sealedNote(workings, arrival, ref),
    };

    const outcome = await askLedger(workings, arrival, [
      unitPart(workings, ref, { type: 'CorrectWork', data }, { ...arrived(arrival), mends: operation }),
    ]);
    return outcome.ok
      ? { ok: true, answer: await workAnswer(workings, outcome, ref) }
      : rejected(outcome.rejection, body);
  };
