import type { NewEvent, Recorded } from '@libs/kernel';
import type { AnyPart, Part, Rejection } from './port';

/**
 * Puts a part's types away once they have been checked against each other, so that parts of several kinds
 * fit one list. The one place where types are erased: what comes back from the writer under a stream's name
 * was put there under that name.
 */
export const partOf = <C, S, E extends NewEvent, R extends { readonly code: string }, F>(
  part: Part<C, S, E, R, F>,
): AnyPart => ({
  stream: `${part.kind.name}/${part.id}`,
  kindName: part.kind.name,
  initial: part.kind.initial,
  decide: (state, read, meta) => {
    const decision = part.kind.decide(part.command, known<S>(state), part.facts(read, meta));
    return decision.ok ? decision : { ok: false, rejection: known<Rejection>(decision.rejection) };
  },
  evolve: (state, event) => part.kind.evolve(known<S>(state), known<Recorded<E>>(event)),
  gather: (read, meta) => {
    part.facts(read, meta);
  },
});

/** Says to the compiler what the stream's name has said already. */
const known = <T>(value: unknown): T => value as T;
