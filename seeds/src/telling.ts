import { ROUTES } from '@libs/contracts';
import type { AnswerOf, PlantTelling, SentBodyOf } from '@libs/contracts';
import type { Plant, Sender } from '@libs/plant';

export type Name = PlantTelling;

/** One thing somebody of the demonstration plant tells or asks, and the moment they send it. */
export type Telling = {
  readonly name: Name;
  readonly body: { readonly [field: string]: unknown };
  readonly params?: { readonly [name: string]: string };
  readonly actor: string;
  /** When it is sent. `occurredAt` in the body is when it happened; left out, the same moment. */
  readonly atMs: number;
};

/** What any telling may be answered with; the fields that only some have are optional here. */
export type Answer = AnswerOf<'lot'> &
  Partial<Pick<AnswerOf<'work'>, 'findings' | 'holds'>> &
  Partial<Pick<AnswerOf<'asking'>, 'answer'>>;

export type Said =
  | { readonly ok: true; readonly key: string; readonly answer: Answer }
  | { readonly ok: false; readonly key: string; readonly code: string };

/** A telling whose fields the compiler has checked against its contract. */
export const telling = <N extends Name>(
  name: N,
  body: SentBodyOf<N>,
  sent: { readonly actor: string; readonly atMs: number; readonly params?: Telling['params'] },
): Telling => ({ name, body: { ...body }, ...sent });

type Tell = (
  body: unknown,
  sender: Sender,
  params: Record<string, string>,
) => Promise<
  | { readonly ok: true; readonly answer: Answer }
  | { readonly ok: false; readonly rejection: { code: string } }
>;

/** A name known only at run time picks its function: that body and answer then belong together is the table's promise. */
const tellingNamed = (plant: Plant, name: Name): Tell => plant.tell[name] as Tell;

/** Through the same contract as a tablet's entry: the simulator has no way in of its own. */
export const send = async (plant: Plant, one: Telling, sender: Sender): Promise<Said> => {
  const body: unknown = ROUTES[one.name].body.parse(one.body);
  const told = await tellingNamed(plant, one.name)(body, sender, { ...one.params });
  return told.ok
    ? { ok: true, key: sender.key, answer: told.answer }
    : { ok: false, key: sender.key, code: told.rejection.code };
};
