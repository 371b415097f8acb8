import type { Fates } from './fates';
import type { Card, Value } from './measured';
import { asRelated, typedValues, valueFor } from './measured';
import type { Section } from './section-state';
import { telling } from './telling';
import type { Telling } from './telling';
import { someoneOf } from './world';

const photosFor = (card: Card, section: Section): readonly string[] => {
  const { chance } = section;
  const takes =
    card.photo === 'always' || card.photo === 'gauge' || (card.photo === 'sample' && chance.yes(0.3));
  return takes ? [chance.hex(64)] : [];
};

/** The values a lead types in: as required, but for the one left out or out of limits. */
const valuesFor = (card: Card, section: Section, fates: Fates): readonly Value[] => {
  const leftOut = fates.leftOut(card);
  const outside = leftOut === null ? fates.outOfLimits(card) : null;
  const values = typedValues(card)
    .filter(({ characteristic }) => characteristic !== leftOut)
    .map((asked) => valueFor(asked, section.chance, asked.characteristic !== outside));
  return asRelated(values, outside === 'end-pressure');
};

/** Everything asked for, as it should be. */
export const rightValues = (card: Card, section: Section): Value[] => [
  ...asRelated(
    typedValues(card).map((asked) => valueFor(asked, section.chance)),
    false,
  ),
];

const sentAt = (
  section: Section,
  station: string,
): { occurredAt: string; device: string; station: string } => ({
  occurredAt: section.world.clock.instant(section.now),
  device: `tablet-${station}`,
  station,
});

/** Looks and tests in the plant are an inspector's, whoever's crew the operation is. */
const signerOf = (section: Section, card: Card): { actor: string; crew: string } => {
  const ownSignature = card.entry === 'I' || card.entry === 'T';
  if (!ownSignature || card.crew === 'installer') return someoneOf(section.world, card.crew, section.chance);

  const actor = someoneWhoDidNotVouch(section);
  if (card.crew !== 'quality') section.vouched.add(actor);
  return { actor, crew: card.crew };
};

/** Nobody inspects what they have signed for themselves. */
export const someoneWhoDidNotVouch = ({ world, chance, vouched }: Section): string => {
  const free = world.staff.inspectors.filter((one) => !vouched.has(one));
  return free.length === 0 ? world.staff.qualityManager : chance.pick(free);
};

/** One entry for one operation: an inspection, a test, or a sign-off made good. */
export const workEntry = (section: Section, card: Card, station: string, fates: Fates): Telling => {
  const { actor, crew } = signerOf(section, card);
  return telling(
    'work',
    {
      serial: section.serial,
      operation: card.operation,
      values: [...valuesFor(card, section, fates)],
      instrument: card.instrument === null ? null : (section.world.instruments.get(card.instrument) ?? null),
      photos: [...photosFor(card, section)],
      crew,
      ...sentAt(section, station),
    },
    { actor, atMs: section.now },
  );
};

/** Work that was right and whose sign-off was forgotten: seen by an inspector before it is covered, with a photo. */
export const seenEntry = (section: Section, card: Card, station: string): Telling => {
  const actor = someoneWhoDidNotVouch(section);
  section.vouched.add(actor);
  return telling(
    'work',
    {
      serial: section.serial,
      operation: card.operation,
      proof: 'seen',
      values: rightValues(card, section),
      photos: [section.chance.hex(64)],
      crew: card.crew,
      ...sentAt(section, station),
    },
    { actor, atMs: section.now },
  );
};

/** Found missing when it was covered already: opened up or scoped, and signed by the quality manager. */
export const reconstructedEntry = (section: Section, card: Card, station: string): Telling =>
  telling(
    'work',
    {
      serial: section.serial,
      operation: card.operation,
      proof: 'reconstructed',
      values: rightValues(card, section),
      photos: [section.chance.hex(64), section.chance.hex(64)],
      crew: card.crew,
      note: section.chance.pick([
        'Scoped through an outlet box',
        'Opened one bay, closed again',
        'Letter on file',
      ]),
      ...sentAt(section, station),
    },
    { actor: section.world.staff.qualityManager, atMs: section.now },
  );

/** "All as planned, except": what this phase does not do yet, and what was forgotten, is excepted. */
export const signOff = (
  section: Section,
  cards: readonly Card[],
  except: readonly string[],
  fates: Fates,
): Telling => {
  const [first] = cards;
  if (first === undefined) throw new Error('A sign-off of nothing');
  const { actor, crew } = someoneOf(section.world, first.crew, section.chance);
  return telling(
    'signOff',
    {
      serial: section.serial,
      except: except.map((operation) => ({ operation })),
      values: cards.flatMap((card) =>
        valuesFor(card, section, fates).map((value) => ({ ...value, operation: card.operation })),
      ),
      photos: cards.flatMap((card) => photosFor(card, section)),
      crew: new Set(cards.map((card) => card.crew)).size === 1 ? crew : null,
      ...sentAt(section, first.station),
    },
    { actor, atMs: section.now },
  );
};
