import type { Card } from './measured';
import { limited, typedValues } from './measured';
import type { Section } from './section-state';
import { yearGone } from './world';

/** Everyday shares, from the ranges a believable line shows (from memory, wide; never shown as facts). */
const SHARES = {
  late: 0.24,
  forgotten: 0.009,
  valueMissing: 0.006,
  outOfLimits: 0.007,
  wrongSerial: 0.06,
  typo: 0.006,
} as const;

/** Share of tests that pass the first time. */
const FIRST_TIME: { readonly [operation: string]: number } = {
  'water-tested': 0.94,
  'drains-tested-open': 0.95,
  'drains-tested-set': 0.95,
  'gas-piping-tested': 0.96,
  'gas-appliances-tested': 0.96,
  'dielectric-tested': 0.982,
  'electric-proved': 0.955,
  'fixtures-tested': 0.95,
  'pan-tested': 0.96,
};

export type Fates = {
  readonly late: () => boolean;
  readonly forgotten: (card: Card) => boolean;
  /** The characteristic left out of this entry, if one is. */
  readonly leftOut: (card: Card) => string | null;
  /** The characteristic that comes out beyond its limit, if one does. */
  readonly outOfLimits: (card: Card) => string | null;
  readonly wrongSerial: () => boolean;
  readonly typo: () => boolean;
};

/** Labels, plates and the last look are never simply forgotten: nobody ships without. */
const NEVER_FORGOTTEN = new Set(['final-inspected', 'labelled', 'road-checked', 'frame-staged']);

/** Nothing goes wrong: for what is done again, with care. */
export const CAREFUL: Fates = {
  late: () => false,
  forgotten: () => false,
  leftOut: () => null,
  outOfLimits: () => null,
  wrongSerial: () => false,
  typo: () => false,
};

export const fatesOf = (section: Section): Fates => {
  const { chance, world } = section;
  const pickFrom = (names: readonly string[]): string | null =>
    names.length === 0 ? null : chance.pick(names);

  // What a visitor is to find there is the one thing amiss.
  if (section.leftOpen.size > 0)
    return { ...CAREFUL, forgotten: ({ operation }) => section.leftOpen.has(operation) };

  return {
    late: () => chance.yes(SHARES.late),
    forgotten: (card) =>
      !NEVER_FORGOTTEN.has(card.operation) && card.entry !== 'T' && chance.yes(SHARES.forgotten),
    leftOut: (card) => {
      const names = typedValues(card).map(({ characteristic }) => characteristic);
      return names.length > 0 && card.entry !== 'T' && chance.yes(SHARES.valueMissing)
        ? pickFrom(names)
        : null;
    },
    outOfLimits: (card) => {
      const names = limited(card).map(({ characteristic }) => characteristic);
      const pass = FIRST_TIME[card.operation];
      const times = world.story.trouble(card.operation, yearGone(world, section.now));
      const share = pass === undefined ? SHARES.outOfLimits * times * (times > 1 ? 3 : 1) : 1 - pass;
      return names.length > 0 && chance.yes(share) ? pickFrom(names) : null;
    },
    wrongSerial: () => section.home.sections.length > 1 && chance.yes(SHARES.wrongSerial),
    typo: () => chance.yes(SHARES.typo),
  };
};
