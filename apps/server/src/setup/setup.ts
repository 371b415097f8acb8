import { randomInt, timingSafeEqual } from 'node:crypto';
import type { Access, Plant } from '@libs/plant';

/** No letter that is read as another, no vowel that makes a word. */
const LETTERS = '23456789BCDFGHJKLMNPQRSTVWXZ';
const LENGTH = 12;

/** The first administrator of a plant: made once, by whoever sees what the server prints. */
export type Setup = {
  /** Null once there is an administrator. */
  readonly code: () => Promise<string | null>;
  readonly matches: (given: string) => Promise<boolean>;
};

export const setupFor = (
  plant: Pick<Plant, 'people'>,
  access: Pick<Access, 'offers' | 'factorsOf'>,
): Setup => {
  const made = Array.from({ length: LENGTH }, () => LETTERS[randomInt(LETTERS.length)]).join('');

  const code = async (): Promise<string | null> => {
    const administrators = (await plant.people()).filter(({ roles }) => roles.includes('administrator'));
    const offers = new Set((await access.offers()).map(({ person }) => person));
    for (const { person } of administrators)
      if (offers.has(person) || (await access.factorsOf(person)).length > 0) return null;
    return made;
  };
  return {
    code,
    matches: async (given) => {
      const expected = await code();
      const typed = given.toUpperCase().replace(/[\s-]/g, '');
      return (
        expected !== null &&
        typed.length === expected.length &&
        timingSafeEqual(Buffer.from(typed), Buffer.from(expected))
      );
    },
  };
};
