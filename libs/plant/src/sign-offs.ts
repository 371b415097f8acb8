import { workAnswer } from './answers';
import type { Tellings } from './told';
import { recheckParts } from './rechecks';
import { arrivalOf, arrived, askLedger, rejected, sealedNote, unitPart } from './telling';
import { unitForStation } from './units';
import type { Workings } from './workings';

/** "All as planned, except ...": one signature for what the station owes this serial. */
export const tellSignOff =
  (workings: Workings): Tellings['signOff'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'signOff', body, sender, params });
    const { station, except, values, photos, crew } = body;
    const ref = await unitForStation(workings, body.serial, station);
    const note = sealedNote(workings, arrival, ref);
    const data = { serial: ref.serial, station, except, values, photos, crew, ...note };

    const outcome = await askLedger(workings, arrival, [
      unitPart(
        workings,
        ref,
        { type: 'SignOffStation', data },
        {
          ...arrived(arrival),
          operations: (plan) => plan.order.filter((id) => plan.operations[id]?.station === station),
        },
      ),
      ...(await recheckParts(workings, arrival, ref, {
        operations: signedAt(workings, station),
        proof: 'signed',
      })),
    ]);
    return outcome.ok
      ? { ok: true, answer: await workAnswer(workings, outcome, ref) }
      : rejected(outcome.rejection, body);
  };

/** Whatever the station may owe: only what a hold of the home is about is looked at again. */
const signedAt = ({ plans }: Workings, station: string): readonly string[] =>
  (plans.current()?.rulebook.operations ?? [])
    .filter((operation) => operation.station === station)
    .map(({ id }) => id);
