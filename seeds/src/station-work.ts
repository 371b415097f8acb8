import { askFirst } from './asking-first';
import { signOff, workEntry } from './entries';
import { fatesOf } from './fates';
import type { Fates } from './fates';
import { report } from './finding-out';
import { tell } from './flow';
import type { Flow } from './flow';
import { affixLabel } from './label-work';
import { lookAgain } from './look-again';
import { typo, wrongSerial } from './mistakes';
import type { Card } from './measured';
import { mend, mendAll } from './mending';
import { makeRecordGood } from './record-made-good';
import { isAsked, phasesOf } from './phases';
import type { Phase } from './phases';
import type { Section } from './section-state';
import { learn } from './section-state';
import { noticedWhen } from './story';
import { later, yearGone } from './world';

/** The minutes of a stay in which its work is spread. */
const WORK_MINUTES = 105;
/** Faults a section collects on its way down, wet and dry halves apart, besides failed tests and odd values. */
const FAULTS = { wet: 2.9, dry: 1.05 };
/** A station with many operations has no more faults for it: its people are looked after the better. */
const OPERATIONS_COUNTED = 4;
/** Before the story ends there is more going on than on an hour's average, and it is still going on. */
const LAST_HOURS_MS = 4 * 3_600_000;
const IN_THE_LAST_HOURS = 3;

/** Of the leads who should ask first, these just tell. */
const TELLS_WITHOUT_ASKING = 0.04;
/** Somebody wants a second look, and a person decides. */
const LOOK_AGAIN = 0.002;

/** All the work of one stay: what the station owes, in the order it is done, until the section moves on. */
export function* workAt(section: Section, station: string, due: readonly Card[]): Flow {
  const phases = phasesOf(due, section.cards, section.done);
  const step = WORK_MINUTES / Math.max(1, phases.length);
  const fates = fatesOf(section);

  for (const [index, phase] of phases.entries()) {
    section.now = later(section.world, section.now, step * (0.6 + 0.5 * section.chance.next()));
    if (section.now > section.world.endMs) return;
    const last = index === phases.length - 1;
    if (phase.is === 'entry') yield* enter(section, station, phase.card, fates);
    else yield* signTogether(section, phase, last, fates);
    yield* faultsOf(section, station, phase);
  }
  noteBadLots(section, station);
  if (section.chance.yes(LOOK_AGAIN)) yield* lookAgain(section);
  yield* mendBeforeMoving(section);
}

/** Whoever works with the bad lot does not know it; the owners will. */
const noteBadLots = ({ world, serial }: Section, station: string): void => {
  const bad = [...world.mounted].some(
    ([where, lot]) => where.startsWith(`${station} `) && world.badLots.has(lot),
  );
  if (bad) world.trimmedWithBadLot.add(serial);
};

function* enter(section: Section, station: string, card: Card, fates: Fates): Flow {
  if (isAsked(card)) yield* askFirst(section, card);
  if (section.now > section.world.endMs) return;
  if (card.label) return yield* affixLabel(section, card);
  if (fates.forgotten(card)) return;

  if (fates.wrongSerial()) {
    const moved = yield* wrongSerial(section, card, station, fates);
    if (moved) return;
  }
  const said = yield* tell(workEntry(section, card, station, fates));
  learn(section, said);
  section.done.add(card.operation);
  if (fates.typo()) yield* typo(section, card);

  const failed = card.entry === 'T' && section.defects.some(({ operation }) => operation === card.operation);
  if (failed) yield* testAgain(section, card, station, fates);
}

/** A failed test is put right and done again before the section goes on. */
function* testAgain(section: Section, card: Card, station: string, fates: Fates): Flow {
  yield* mendAll(section);
  section.now = later(section.world, section.now, 20);
  learn(section, yield* tell(workEntry(section, card, station, { ...fates, outOfLimits: () => null })));
}

function* signTogether(
  section: Section,
  phase: Phase & { is: 'sign-off' },
  last: boolean,
  fates: Fates,
): Flow {
  const asked = phase.cards.find(isAsked);
  if (asked !== undefined && asks(section)) yield* askFirst(section, asked);
  if (section.now > section.world.endMs) return;

  const cards = phase.cards.filter((card) => !fates.forgotten(card));
  if (cards.length === 0) return;
  const entry = signOff(section, cards, exceptedBy(section, phase, cards), fates);
  for (const card of cards) section.done.add(card.operation);

  if (last && fates.late()) {
    section.unsent.push(entry);
    return;
  }
  learn(section, yield* tell(entry));
}

const asks = ({ chance, leftOpen }: Section): boolean =>
  leftOpen.size > 0 || !chance.yes(TELLS_WITHOUT_ASKING);

/** Everything the station signs together that this sign-off does not. */
const exceptedBy = (
  section: Section,
  phase: Phase & { is: 'sign-off' },
  cards: readonly Card[],
): readonly string[] => {
  const now = new Set(cards.map(({ operation }) => operation));
  return [...section.cards.values()]
    .filter(
      (card) => card.station === phase.station && (card.entry === 'S' || card.entry === 'V') && !card.label,
    )
    .map(({ operation }) => operation)
    .filter((operation) => !now.has(operation) && !section.done.has(operation));
};

/** Faults made with this work: some are seen at once, some at a later station, some not before the home is lived in. */
function* faultsOf(section: Section, station: string, phase: Phase): Flow {
  const { world, chance } = section;
  const cards = phase.is === 'entry' ? [phase.card] : phase.cards;
  const perOperation = (section.wet ? FAULTS.wet : FAULTS.dry) / Math.max(1, section.cards.size);

  for (const card of cards) {
    const faults = world.faults.get(card.operation) ?? [];
    const many = Math.min(1, OPERATIONS_COUNTED / operationsAt(section, card.station));
    const likelier =
      2 * many * world.story.trouble(card.operation, yearGone(world, section.now)) * lastHours(section);
    if (faults.length === 0 || !chance.yes(Math.min(0.6, perOperation * likelier))) continue;

    const hidden = { fault: chance.pick(faults), place: null };
    if (noticedWhen(chance) === 'at-once') yield* report(section, hidden, station);
    else section.hidden.push(hidden);
  }
}

const operationsAt = (section: Section, station: string): number =>
  [...section.cards.values()].filter((card) => card.station === station).length;

const lastHours = ({ world, now }: Section): number =>
  world.endMs - now < LAST_HOURS_MS ? IN_THE_LAST_HOURS : 1;

/** Most of what is known is mended before the section moves; a little is carried along. */
function* mendBeforeMoving(section: Section): Flow {
  for (const known of [...section.defects]) {
    if (section.chance.yes(lastHours(section) > 1 ? 0.3 : 0.82)) yield* mend(section, known);
  }
  if (section.recordHolds.length > 0 && section.chance.yes(0.75)) yield* makeRecordGood(section);
}
