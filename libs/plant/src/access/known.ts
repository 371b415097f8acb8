import type { Holder } from './access-rows';

/** A token withdrawn by another process (the command line) stops working after this long at the latest. */
const TRUSTED_FOR_MS = 30_000;
/** More than a plant has tablets and machines; a flood of made-up tokens is not kept at all. */
const KEPT = 2_000;

/** Who holds which secret, in memory, so that a request does not wait for the database. */
export type Known = {
  readonly get: (hash: string, now: number) => Holder | undefined;
  readonly put: (hash: string, holder: Holder, now: number) => void;
  readonly drop: (hash: string) => void;
  readonly clear: () => void;
};

export const known = (): Known => {
  const holders = new Map<string, { readonly holder: Holder; readonly until: number }>();

  return {
    get: (hash, now) => {
      const found = holders.get(hash);
      return found !== undefined && now < found.until ? found.holder : undefined;
    },
    put: (hash, holder, now) => {
      if (holders.size >= KEPT) holders.clear();
      holders.set(hash, { holder, until: Math.min(now + TRUSTED_FOR_MS, holder.expiresAt ?? Infinity) });
    },
    drop: (hash) => {
      holders.delete(hash);
    },
    clear: () => {
      holders.clear();
    },
  };
};
