import { PLANT_TELLINGS, ROUTES } from '@libs/contracts';
import type { AnswerOf, PlantTelling } from '@libs/contracts';
import type { Plant, Sender } from '@libs/plant';
import { z } from 'zod';

/** What a line of commands may call for. */
export const isTelling = (name: string): name is PlantTelling => PLANT_TELLINGS.has(name);

export type TellingAnswer =
  | { readonly ok: true; readonly answer: AnswerOf<'lot'> }
  | { readonly ok: false; readonly code: string; readonly reason: string };

type Tell = (
  body: unknown,
  sender: Sender,
  params: { readonly [name: string]: string },
) => Promise<
  | { readonly ok: true; readonly answer: AnswerOf<'lot'> }
  | { readonly ok: false; readonly rejection: { readonly code: string; readonly [field: string]: unknown } }
>;

/** A name known only at run time picks its function: that body and answer belong together is the table's promise. */
const tellingNamed = (plant: Plant, name: PlantTelling): Tell => plant.tell[name] as Tell;

export type Sent = {
  readonly name: PlantTelling;
  readonly body: unknown;
  readonly sender: Sender;
  readonly params?: { readonly [name: string]: string };
};

/** Through the contract the server uses, and through the same door: there is no second way in. */
export const tellPlant = async (
  plant: Plant,
  { name, body, sender, params }: Sent,
): Promise<TellingAnswer> => {
  const read: z.ZodSafeParseResult<unknown> = ROUTES[name].body.safeParse(body);
  if (!read.success)
    return { ok: false, code: 'body-wrong', reason: z.prettifyError(read.error).replaceAll('\n', ' ') };

  const told = await tellingNamed(plant, name)(read.data, sender, { ...params });
  return told.ok ? told : { ok: false, code: told.rejection.code, reason: reasonOf(told.rejection) };
};

/** `section-unknown (serial H26-1003-A)`: the code a program can act on, and what it speaks of. */
const reasonOf = ({
  code,
  pointer: _pointer,
  ...fields
}: {
  readonly code: string;
  readonly [field: string]: unknown;
}): string => {
  const said = Object.entries(fields)
    .filter(([, value]) => value !== undefined && value !== null)
    .map(([name, value]) => `${name} ${typeof value === 'string' ? value : JSON.stringify(value)}`);
  return said.length === 0 ? code : `${code} (${said.join(', ')})`;
};
