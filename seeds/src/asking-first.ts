import { reconstructedEntry, seenEntry, workEntry } from './entries';
import { fatesOf } from './fates';
import { tell } from './flow';
import type { Flow } from './flow';
import type { Card } from './measured';
import { mendAll } from './mending';
import { isCovered, makeRecordGood } from './record-made-good';
import { sendUnsent } from './late';
import type { Section } from './section-state';
import { isReached, learn } from './section-state';
import { telling } from './telling';
import type { Answer } from './telling';
import { later, someoneOf } from './world';

/** After so many refusals a lead stops asking and calls the quality manager. */
const TRIES = 4;

/** "May I?": refused with reasons, the reasons put right, asked again. */
export function* askFirst(section: Section, card: Card): Flow {
  for (let tries = 0; tries < TRIES; tries += 1) {
    const answer = yield* ask(section, card);
    if (answer === undefined || answer.answer === 'cleared') return;
    if (tries > 0 && waitsForLeftOpen(section, answer)) {
      standStill(section);
      return;
    }
    yield* putRight(section, card, answer.findings ?? []);
  }
}

const waitsForLeftOpen = (section: Section, { findings = [] }: Answer): boolean =>
  findings.some(({ operation, grade }) => grade === 'refuse' && section.leftOpen.has(operation));

/** It stands where it is until the story ends; a visitor goes on from here. */
const standStill = (section: Section): void => {
  section.now = section.world.endMs + 1;
};

function* ask(section: Section, card: Card): Flow<Answer | undefined> {
  const { world, chance, serial } = section;
  section.now = later(world, section.now, chance.between(1, 4));
  const said = yield* tell(
    telling(
      'asking',
      {
        serial,
        operation: card.operation,
        occurredAt: world.clock.instant(section.now),
        device: `tablet-${card.station}`,
        station: card.station,
      },
      { actor: someoneOf(world, card.crew, chance).actor, atMs: section.now },
    ),
  );
  const [first] = said;
  return first?.ok === true ? first.answer : undefined;
}

/** What a refusal names: late sign-offs are sent, defects mended, forgotten work is seen or opened up. */
function* putRight(section: Section, asked: Card, findings: NonNullable<Answer['findings']>): Flow {
  yield* sendUnsent(section);
  yield* mendAll(section);
  yield* makeRecordGood(section);

  for (const { operation, rule } of findings) {
    const card = section.cards.get(operation);
    if (card === undefined || card.label || !isReached(section, card)) continue;
    if (section.done.has(operation) || operation === asked.operation || section.leftOpen.has(operation))
      continue;
    section.now = later(section.world, section.now, section.chance.between(3, 15));
    const entry = madeGood(section, card, rule);
    learn(section, yield* tell(entry));
    section.done.add(operation);
  }
}

const madeGood = (section: Section, card: Card, rule: string): ReturnType<typeof workEntry> => {
  if (isCovered(section, card) || rule === 'recorded-under-cover') {
    return reconstructedEntry(section, card, card.station);
  }
  if (card.entry === 'I' || card.entry === 'T' || section.chance.yes(0.5)) {
    return workEntry(section, card, card.station, fatesOf(section));
  }
  return seenEntry(section, card, card.station);
};
