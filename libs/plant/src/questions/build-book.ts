import type { AnswerOf } from '@libs/contracts';
import { isProven } from '@libs/judge';
import type { CompiledPlan, DoneWork, PlannedOperation, WorkState } from '@libs/judge';
import { epochMs, floorDay } from '@libs/kernel';
import { PLANT } from '@libs/record';
import type { Unit } from '@libs/record';
import type { Asked } from './asked';
import { mendedIn } from './mended';
import { GOVERNING } from './governing';
import type { Questions } from './questions';
import { subjectOf } from './subject';
import type { Subject } from './subject';

type Book = AnswerOf<'linkBook'>;
type Work = Book['stations'][number]['work'][number];

/** One operation of the book: everywhere in the home that it applies. */
type Chapter = {
  readonly operation: PlannedOperation;
  readonly stories: readonly Story[];
};
/** Of one section, or of the whole home at its site. */
type Story = { readonly plan: CompiledPlan; readonly state: WorkState; readonly unit: Unit };

/** How a home was built, station by station, in the plain words of the rulebook it was judged by. Nobody is named. */
export const buildBookQuestion =
  (asked: Asked): Questions['buildBook'] =>
  async (serial, withDefects) => {
    const subject = await subjectOf(serial, asked);
    if (subject === undefined) return undefined;

    const { home, sections } = subject;
    const chapters = chaptersOf(await storiesOf(subject, asked));
    const written = chapters.filter(isDone);
    const { opened } = await asked.ledger.state(PLANT, 'plant');
    return {
      home: home.serial,
      model: home.model,
      plant: opened?.name ?? '',
      demonstration: opened?.demonstration ?? false,
      sections: sections.map((section) => ({ serial: section.serial, label: section.label })),
      stations: stationsOf(written),
      tests: written
        .filter(({ operation }) => operation.entry === 'T')
        .map((chapter) => ({ says: plainly(chapter), on: lastDay(chapter) })),
      agencySaw: agencySawIn(subject),
      open: chapters.filter((chapter) => !isDone(chapter)).map(plainName),
      mended: withDefects ? await mendedIn(subject, asked) : null,
      governing: GOVERNING,
    };
  };

const storiesOf = async ({ home, sections }: Subject, asked: Asked): Promise<readonly Story[]> => {
  const stories: Story[] = [];
  for (const unit of [...sections, home]) {
    const own = await subjectOf(unit.serial, asked);
    if (own !== undefined && own.plan !== null) stories.push({ plan: own.plan, state: own.state, unit });
  }
  return stories;
};

/** In working order. What is done on the whole home is told of the home, the rest of each section it applies to. */
const chaptersOf = (stories: readonly Story[]): readonly Chapter[] => {
  const chapters = new Map<string, Chapter>();
  for (const story of stories) {
    for (const id of story.plan.order) {
      const operation = story.plan.operations[id];
      if (operation?.plain == null || !isToldOf(operation, story)) continue;
      const known = chapters.get(id)?.stories ?? [];
      chapters.set(id, { operation, stories: [...known, story] });
    }
  }
  return [...chapters.values()];
};

const isToldOf = ({ scope }: PlannedOperation, { unit }: Story): boolean => scope === unit.kind;

const isDone = ({ operation, stories }: Chapter): boolean =>
  stories.every(({ plan, state }) => isProven(plan, state, operation.id));

const doneIn = ({ operation, stories }: Chapter): readonly DoneWork[] =>
  stories.flatMap(({ state }) => state.work[operation.id] ?? []);

const plainly = ({ operation }: Chapter): Work['says'] => operation.plain ?? operation.name;
const plainName = ({ operation }: Chapter): Work['says'] => operation.name;
const lastDay = (chapter: Chapter): string =>
  doneIn(chapter)
    .map(({ occurredAt }) => floorDay(occurredAt))
    .reduce((last, day) => (day > last ? day : last), '');
const firstDay = (chapter: Chapter): string =>
  doneIn(chapter)
    .map(({ occurredAt }) => floorDay(occurredAt))
    .reduce((first, day) => (day < first ? day : first), lastDay(chapter));

const stationsOf = (chapters: readonly Chapter[]): Book['stations'] => {
  const stations = new Map(
    chapters.flatMap(({ stories }) =>
      stories.flatMap(({ plan }) => plan.stations.map((station) => [station.id, station] as const)),
    ),
  );
  return [...stations.values()].flatMap(({ id, name }) => {
    const own = chapters.filter(({ operation }) => operation.station === id);
    if (own.length === 0) return [];
    return [
      {
        name,
        from: own.map(firstDay).reduce((first, day) => (day < first ? day : first)),
        to: own.map(lastDay).reduce((last, day) => (day > last ? day : last)),
        work: own.filter(({ operation }) => operation.entry !== 'T').map((chapter) => workOf(chapter)),
      },
    ];
  });
};

const workOf = (chapter: Chapter): Work => ({
  says: plainly(chapter),
  on: lastDay(chapter),
  hidden: chapter.stories.some((story) => isHidden(chapter.operation.id, story)),
  known: knownBy(chapter),
  photos: chapter.stories.reduce(
    (sum, { unit }) => sum + (unit.evidence[chapter.operation.id]?.photos.length ?? 0),
    0,
  ),
});

/** Something that was done since is in front of it, and cannot be lifted by hand. */
const isHidden = (id: string, story: Story): boolean => coveredAt(id, story) !== null;

/** When it went out of sight, in milliseconds; null: it can be seen. */
const coveredAt = (id: string, { plan, state }: Story): number | null => {
  const covers = Object.values(plan.operations).flatMap(({ id: cover, hides }) => {
    const done = state.work[cover];
    const isCover = hides.some(({ operation, hidden }) => operation === id && hidden !== 'lift');
    return isCover && done !== undefined ? [epochMs(done.occurredAt)] : [];
  });
  return covers.length === 0 ? null : Math.min(...covers);
};

/** The weakest of how it is known in its sections. */
const knownBy = (chapter: Chapter): Work['known'] => {
  const ways = chapter.stories.map((story) => wayIn(chapter.operation.id, story));
  if (ways.includes('reconstructed')) return 'reconstructed';
  return ways.every((way) => way === 'seen') ? 'seen' : 'signed';
};

/**
 * Seen as such, or by an inspection that asks for it, while it could still be seen: that one is signed by somebody not
 * of the crew. The final inspection asks for everything, and saw none of what was covered by then.
 */
const wayIn = (id: string, { plan, state, unit }: Story): Work['known'] => {
  const proof = state.work[id]?.proof ?? 'signed';
  if (proof !== 'signed') return proof;
  const gone = coveredAt(id, { plan, state, unit }) ?? Infinity;
  const inspected = Object.values(plan.operations).some(
    ({ id: inspection, entry, requires }) =>
      entry === 'I' &&
      requires.some(({ operation }) => operation === id) &&
      isProven(plan, state, inspection) &&
      epochMs(state.work[inspection]?.occurredAt ?? '') <= gone,
  );
  return inspected ? 'seen' : 'signed';
};

const agencySawIn = ({ home, sections, plan }: Subject): Book['agencySaw'] => {
  const stages = new Set([home, ...sections].flatMap(({ seen }) => seen));
  return (plan?.stations ?? []).filter(({ id }) => stages.has(id)).map(({ name }) => name);
};
