import type { Signature } from '@libs/kernel';

/** Signatures given by hand and waiting for the telling they are for. */
export type SignatureDesk = {
  /** For one telling: the session's, under this idempotency key. Returns until when it waits. */
  readonly sign: (session: string, key: string, signature: Signature) => number;
  /** Stays for a while after it was used: the same telling may have to be sent again. */
  readonly signatureFor: (session: string, key: string) => Signature | undefined;
};

/** Long enough for a slow link, too short to leave the desk. */
const WAITS_MS = 120_000;
/** More than a plant's people sign at once. */
const KEPT = 1_000;

export const signatureDesk = (now: () => number = Date.now): SignatureDesk => {
  const waiting = new Map<string, { readonly signature: Signature; readonly until: number }>();
  const nameOf = (session: string, key: string): string => JSON.stringify([session, key]);
  return {
    sign: (session, key, signature) => {
      const oldest = waiting.keys().next();
      if (waiting.size >= KEPT && oldest.done !== true) waiting.delete(oldest.value);
      const until = now() + WAITS_MS;
      waiting.set(nameOf(session, key), { signature, until });
      return until;
    },
    signatureFor: (session, key) => {
      const found = waiting.get(nameOf(session, key));
      return found !== undefined && now() < found.until ? found.signature : undefined;
    },
  };
};
