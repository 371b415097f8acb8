import { randomBytes } from 'node:crypto';

/** Asked of an authenticator, and taken as answered once, soon. `for`: who it was asked of; null: whoever comes. */
export type Challenges = {
  readonly make: (person: string | null) => string;
  readonly take: (challenge: string, person: string | null) => boolean;
};

const BYTES = 32;
const LASTS_MS = 300_000;
/** More than a plant's people at once. The oldest go first: a flood of questions fills no memory. */
const KEPT = 1_000;

export const challenges = (now: () => number): Challenges => {
  const open = new Map<string, { readonly person: string | null; readonly until: number }>();
  return {
    make: (person) => {
      const challenge = randomBytes(BYTES).toString('base64url');
      const oldest = open.keys().next();
      if (open.size >= KEPT && oldest.done !== true) open.delete(oldest.value);
      open.set(challenge, { person, until: now() + LASTS_MS });
      return challenge;
    },
    take: (challenge, person) => {
      const asked = open.get(challenge);
      open.delete(challenge);
      return asked !== undefined && asked.person === person && now() < asked.until;
    },
  };
};
