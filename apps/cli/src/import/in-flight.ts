/** Lanes side by side: enough to fill the writer's batches, few enough to keep every promise in hand. */
const LANES = 256;
/** Rows read ahead of the plant. More would only fill memory. */
const WAITING = 2_048;

export type InFlight = {
  /** Runs after everything given under the same name before; waits while too much is under way. */
  readonly add: (name: string, work: () => Promise<void>) => Promise<void>;
  /** Until all is done; throws what the first failing work threw. */
  readonly settled: () => Promise<void>;
};

/** Many at once, and yet each serial's in the order of the file. */
export const inFlight = (): InFlight => {
  const lanes: Promise<void>[] = Array.from({ length: LANES }, () => Promise.resolve());
  let waiting = 0;
  let failure: { readonly error: unknown } | undefined;
  let wake: () => void = () => undefined;

  const run = async (work: () => Promise<void>): Promise<void> => {
    try {
      if (failure === undefined) await work();
    } catch (error) {
      failure ??= { error };
    } finally {
      waiting -= 1;
      wake();
    }
  };
  const rethrow = (): void => {
    if (failure !== undefined) throw failure.error;
  };

  return {
    add: async (name, work) => {
      rethrow();
      while (waiting >= WAITING) {
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
      waiting += 1;
      const lane = laneOf(name);
      lanes[lane] = (lanes[lane] ?? Promise.resolve()).then(() => run(work));
    },
    settled: async () => {
      await Promise.all(lanes);
      rethrow();
    },
  };
};

const laneOf = (name: string): number => {
  let hash = 0;
  for (let index = 0; index < name.length; index += 1)
    hash = (Math.imul(hash, 31) + name.charCodeAt(index)) >>> 0;
  return hash % LANES;
};
