import type { Deliver } from './deliver';
import { serve } from './follower';
import type { FeedGround } from './ground';

export type Serving = {
  /** Serves it until nothing is left; where it is being served already, once more after that. */
  readonly start: (id: string) => Promise<void>;
  readonly settled: () => Promise<void>;
};

/** Each subscription is served by itself: a receiver that is slow or down holds up no other. */
export const servingOf = (
  ground: FeedGround,
  deliver: Deliver,
  told: { readonly waitsUntil: (at: number) => void; readonly trouble: (fault: unknown) => void },
): Serving => {
  const going = new Map<string, Promise<void>>();
  const again = new Set<string>();
  const run = async (id: string): Promise<void> => {
    try {
      do {
        again.delete(id);
        const at = await serve(ground, deliver, id);
        if (at !== null) told.waitsUntil(at);
      } while (again.has(id));
    } catch (fault) {
      told.trouble(fault);
    } finally {
      going.delete(id);
    }
  };
  return {
    start: (id) => {
      const known = going.get(id);
      if (known !== undefined) {
        again.add(id);
        return known;
      }
      const done = run(id);
      going.set(id, done);
      return done;
    },
    settled: async () => {
      await Promise.all(going.values());
    },
  };
};
