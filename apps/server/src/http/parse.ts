import type { z } from 'zod';
import type { Trouble } from './problem';
import { badRequest, pointerOf } from './problem';

/** A runaway body can break in a thousand places; the first of them are enough to mend it. */
const TROUBLES_TOLD = 20;

/** Every field that is wrong is named at once. `under` is where the value was: nothing for a body, else `query`, `path`. */
export const parse = <T extends z.ZodType>(
  schema: T,
  value: unknown,
  under: readonly string[] = [],
): z.output<T> => {
  const parsed = schema.safeParse(value);
  if (parsed.success) {
    // JSON can hold half of a surrogate pair; nothing can be recorded or hashed with one in it (RFC 8785, 3.2.2.2).
    if (LONE_SURROGATE.test(JSON.stringify([parsed.data]))) throw halfACharacter(under);
    return parsed.data;
  }

  throw badRequest(
    'The request is not as this route takes it',
    parsed.error.issues.slice(0, TROUBLES_TOLD).flatMap((issue) => troubles(issue, value, under)),
  );
};

/** JSON.stringify writes one as an escape (ECMA-262, 25.5.2.2), and a well-formed pair as it is. */
const LONE_SURROGATE = /(?<!\\)(?:\\\\)*\\ud[89a-f][0-9a-f]{2}/;

const halfACharacter = (under: readonly string[]): Error =>
  badRequest('The request holds half a character', [
    { pointer: pointerOf(under), detail: 'text holds half of a surrogate pair' },
  ]);

/** A field that does not belong is named itself, not the object it was found in. */
const troubles = (issue: z.core.$ZodIssue, value: unknown, under: readonly string[]): readonly Trouble[] =>
  issue.code === 'unrecognized_keys'
    ? issue.keys.map((key) => ({
        pointer: pointerOf([...under, ...issue.path, key]),
        detail: 'not a field of this request',
      }))
    : [
        {
          pointer: pointerOf([...under, ...issue.path]),
          detail: at(value, issue.path) === undefined ? 'missing' : issue.message,
        },
      ];

const at = (value: unknown, [step, ...rest]: readonly PropertyKey[]): unknown => {
  if (step === undefined) return value;
  return typeof value === 'object' && value !== null ? at(Reflect.get(value, step), rest) : undefined;
};
