import { askingAnswer } from './answers';
import type { Tellings } from './told';
import { arrivalOf, arrived, askLedger, rejected, unitPart } from './telling';
import { unitFor } from './units';
import type { Workings } from './workings';

/** "May I?": cleared or refused, and on record either way. */
export const tellAsking =
  (workings: Workings): Tellings['asking'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'asking', body, sender, params });
    const { operation, except } = body;
    const ref = await unitFor(workings, body.serial, operation);

    const outcome = await askLedger(workings, arrival, [
      unitPart(
        workings,
        ref,
        { type: 'Ask', data: { serial: ref.serial, operation, except } },
        { ...arrived(arrival), asks: operation },
      ),
    ]);
    return outcome.ok
      ? { ok: true, answer: await askingAnswer(workings, outcome, ref) }
      : rejected(outcome.rejection, body);
  };
