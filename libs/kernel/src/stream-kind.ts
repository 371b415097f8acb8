import type { Decision } from './decision';
import type { NewEvent, Recorded } from './envelope';

/**
 * A kind of stream: how its commands are decided and its state evolves. Pure.
 * Its streams are named `${name}/${id}`.
 */
export type StreamKind<C, S, E extends NewEvent, R extends { readonly code: string }, F> = {
  readonly name: string;
  readonly initial: S;
  readonly decide: (command: C, state: S, facts: F) => Decision<E, R>;
  /** Never refuses, never fails; remembers only what a later decision needs. Returns a new state. */
  readonly evolve: (state: S, event: Recorded<E>) => S;
};

/**
 * Reads another stream's state inside the writer. A stream not loaded yet reads as its initial state
 * while the writer gathers what a batch needs; it then loads the misses and asks again.
 */
export type ReadStream = <S>(
  kind: {
    readonly name: string;
    readonly initial: S;
    /** `never` lets any kind's own evolve fit here; the writer folds with it what it loads. */
    readonly evolve: (state: S, event: never) => S;
  },
  id: string,
) => S;
