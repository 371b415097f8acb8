import type { UnitCommand } from '@libs/record';
import type { AnswerOf } from '@libs/contracts';
import { workAnswer } from './answers';
import type { UnitRef } from './wanted';
import type { Told } from './told';
import { arrived, askLedger, rejected, unitPart } from './telling';
import type { Arrival, When } from './telling';
import type { Workings } from './workings';

/** One command to one unit: most of what a plant tells needs no more. */
export const tellUnit = async <B extends When & { readonly [field: string]: unknown }>(
  workings: Workings,
  arrival: Arrival<B>,
  ref: UnitRef,
  command: UnitCommand,
): Promise<Told<AnswerOf<'work'>>> => {
  const { body } = arrival;
  const outcome = await askLedger(workings, arrival, [unitPart(workings, ref, command, arrived(arrival))]);
  return outcome.ok
    ? { ok: true, answer: await workAnswer(workings, outcome, ref) }
    : rejected(outcome.rejection, body);
};
