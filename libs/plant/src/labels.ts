import { partOf } from '@libs/ledger';
import { LABEL } from '@libs/record';
import { workAnswer } from './answers';
import type { Tellings } from './plant';
import { arrivalOf, arrived, askLedger, rejected, unitPart } from './telling';
import { sectionOf } from './units';
import type { Workings } from './workings';

/** The number is used up and the section has its label, in one commit. */
export const tellLabel =
  (workings: Workings): Tellings['label'] =>
  async (body, sender, params) => {
    const arrival = arrivalOf(workings, { route: 'label', body, sender, params });
    const ref = await sectionOf(workings, body.serial);
    // People write the number with spaces or without; it is one number.
    const number = body.number.replaceAll(' ', '');
    const { photos } = body;

    const outcome = await askLedger(workings, arrival, [
      unitPart(
        workings,
        ref,
        { type: 'AffixLabel', data: { serial: ref.serial, number, photos } },
        {
          ...arrived(arrival),
          operations: (plan) => plan.order.filter((id) => plan.operations[id]?.label === true),
        },
      ),
      partOf({
        kind: LABEL,
        id: number,
        command: { type: 'UseLabel', data: { number, serial: ref.serial } },
        facts: () => ({}),
      }),
    ]);
    return outcome.ok
      ? { ok: true, answer: await workAnswer(workings, outcome, ref) }
      : rejected(outcome.rejection, body);
  };
