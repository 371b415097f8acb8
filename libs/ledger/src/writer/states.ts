/** A stream as the writer knows it: what its decider remembers, and how many events it has. */
export type Held = { readonly state: unknown; readonly version: number };

/** Lean states of the streams at work: a plant has a few hundred sections under way, and their stations and lots. */
export const STATES_KEPT = 2_000;

export type States = {
  readonly get: (stream: string) => Held | undefined;
  readonly set: (stream: string, held: Held) => void;
  readonly clear: () => void;
};

/**
 * The streams used last. Two generations: what the young one does not hold is looked up in the old one and
 * carried over; when the young one is full, the old one goes. As good as a strict order of last use here, and
 * a read costs one look-up instead of a delete and an insert.
 */
export const statesKept = (limit: number = STATES_KEPT): States => {
  let young = new Map<string, Held>();
  let old = new Map<string, Held>();

  const set = (stream: string, held: Held): void => {
    young.set(stream, held);
    if (young.size * 2 <= limit) return;
    old = young;
    young = new Map();
  };

  return {
    set,
    get: (stream) => {
      const held = young.get(stream);
      if (held !== undefined) return held;

      const aged = old.get(stream);
      if (aged !== undefined) set(stream, aged);
      return aged;
    },
    clear: () => {
      young = new Map();
      old = new Map();
    },
  };
};
