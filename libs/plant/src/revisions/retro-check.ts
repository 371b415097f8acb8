import { findingSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { floorDay } from '@libs/kernel';
import type { Envelope } from '@libs/kernel';
import type { HomeOrdered, RecordedUnitEvent, RetroFound } from '@libs/record';
import { unitEventsIn } from '@libs/views';
import { namesOf } from '../names';
import type { Names } from '../names';
import { inOneLine } from '../plans';
import type { Span } from '../told';
import type { Workings } from '../workings';
import type { RecordingsBook } from './recordings';
import { recordingsBook } from './recordings';
import { designsIn, familyIn, retroFamily } from './retro-family';
import type { Family } from './retro-family';
import type { Target } from './which';

export type RetroLine = AnswerOf<'retroCheck'>;
type Found = Extract<RetroLine, { readonly is: 'found' }>;

/** Homes read at once: a page or two of the log. */
const HOMES_AT_ONCE = 20;

type Tally = {
  homes: number;
  sections: Set<string>;
  entries: number;
  judged: number;
  found: number;
  fresh: number;
};

/** Runs a revision over a span of history, home by home, and says what it would not have accepted as it goes. */
export async function* retroCheck(workings: Workings, target: Target, span: Span): AsyncGenerator<RetroLine> {
  const homes = await homeStreams(workings);
  const book = recordingsBook(workings);
  const names = namesOf(target.rulebook);
  const tally: Tally = { homes: 0, sections: new Set(), entries: 0, judged: 0, found: 0, fresh: 0 };
  for (let first = 0; first < homes.length; first += HOMES_AT_ONCE) {
    const batch = homes.slice(first, first + HOMES_AT_ONCE);
    for (const one of await familiesIn(workings, batch)) {
      yield* linesOf(one, { target, span, book, names, tally });
    }
    yield { is: 'progress', homes: tally.homes, of: homes.length, entries: tally.entries };
  }
  yield { is: 'done', ...tally, sections: tally.sections.size };
}

/** In the order in which they were ordered. '0' follows '/': all streams that begin with `home/`. */
const homeStreams = async ({ reader }: Workings): Promise<readonly string[]> =>
  (
    await reader.query<{ readonly stream: string }>(
      `SELECT stream FROM event WHERE stream > 'home/' AND stream < 'home0' AND version = 1 ORDER BY position`,
    )
  ).map(({ stream }) => stream);

type FamilyEvents = { readonly ordered: HomeOrdered['data']; readonly events: readonly RecordedUnitEvent[] };

const familiesIn = async (
  { ledger }: Workings,
  homes: readonly string[],
): Promise<readonly FamilyEvents[]> => {
  const ofHomes = await ledger.ofStreams(homes);
  const ordered = ofHomes.filter(({ version }) => version === 1).map(orderIn);
  const streams = ordered.flatMap(({ sections }) => sections.map((serial) => `section/${serial}`));
  const ofSections = streams.length === 0 ? [] : await ledger.ofStreams(streams);
  const byHome = new Map<string, RecordedUnitEvent[]>(ordered.map(({ home }) => [home, []]));
  const homeOf = new Map<string, string>();
  for (const { home, sections } of ordered) {
    homeOf.set(`home/${home}`, home);
    for (const serial of sections) homeOf.set(`section/${serial}`, home);
  }
  const inOrder = [...ofHomes, ...ofSections].sort((a, b) => a.position - b.position);
  for (const event of unitEventsIn(inOrder)) byHome.get(homeOf.get(event.stream) ?? '')?.push(event);
  return ordered.map((data) => ({ ordered: data, events: byHome.get(data.home) ?? [] }));
};

/** A home's first event is its order. */
const orderIn = ({ data }: Envelope): HomeOrdered['data'] => data as unknown as HomeOrdered['data'];

type Checking = {
  readonly target: Target;
  readonly span: Span;
  readonly book: RecordingsBook;
  readonly names: Names;
  readonly tally: Tally;
};

async function* linesOf({ ordered, events }: FamilyEvents, checking: Checking): AsyncGenerator<RetroLine> {
  const { span, book, tally, target, names } = checking;
  const inSpan = events.filter((event) => isEntry(event) && isWithin(event.occurredAt, span));
  tally.homes += 1;
  tally.entries += events.length;
  if (inSpan.length === 0) return;

  tally.judged += inSpan.length;
  const family = familyOf(ordered.home, events, target);
  if (!family.ok) {
    yield { is: 'unfit', serial: ordered.home, home: ordered.home, says: family.says };
    return;
  }
  await book.lookUp(...usedIn(events));
  const judgedBy = new Map(inSpan.map(({ position, revision }) => [position, revision]));
  for (const found of retroFamily(family.family, events, book.at, target)) {
    const revision = judgedBy.get(found.position);
    if (revision === undefined) continue;
    tally.sections.add(found.serial);
    for (const line of foundLines(found, { home: ordered.home, judgedBy: revision, names, target })) {
      tally.found += 1;
      tally.fresh += line.saidThen ? 0 : 1;
      yield line;
    }
  }
}

const ENTRIES: ReadonlySet<string> = new Set(['WorkRecorded', 'TestRecorded', 'WorkCorrected']);

const isEntry = ({ type }: RecordedUnitEvent): boolean => ENTRIES.has(type);

const isWithin = (occurredAt: string, { from, to }: Span): boolean => {
  const day = floorDay(occurredAt);
  return (from === null || day >= from) && (to === null || day <= to);
};

const usedIn = (events: readonly RecordedUnitEvent[]): [Set<string>, Set<string>] => {
  const lots = new Set<string>();
  const instruments = new Set<string>();
  for (const event of events) {
    if (event.type !== 'WorkRecorded' && event.type !== 'TestRecorded' && event.type !== 'WorkCorrected')
      continue;
    for (const lot of event.data.lots) lots.add(lot);
    if (event.data.instrument !== null) instruments.add(event.data.instrument);
  }
  return [lots, instruments];
};

type Fit = { readonly ok: true; readonly family: Family } | { readonly ok: false; readonly says: string };

/** A design the rulebook has no plan for is told of, and not judged. */
const familyOf = (home: string, events: readonly RecordedUnitEvent[], { plans, revision }: Target): Fit => {
  const family = familyIn(home, events);
  for (const design of designsIn(family, events)) {
    const answer = plans.tryPlanFor(revision, design);
    if (!answer.ok) return { ok: false, says: answer.problems.map(inOneLine).join('; ') };
  }
  return { ok: true, family };
};

type About = {
  readonly home: string;
  readonly judgedBy: number | null;
  readonly names: Names;
  readonly target: Target;
};

const foundLines = (
  { serial, operation, position, occurredAt, findings }: RetroFound,
  { home, judgedBy, names }: About,
): readonly Found[] =>
  findings.map(({ finding, saidThen }) => ({
    is: 'found',
    serial,
    home,
    operation,
    name: names.operation(operation),
    station: finding.station,
    position,
    occurredAt,
    judgedBy,
    rule: finding.rule,
    grade: finding.grade,
    says: findingSays(finding, names),
    saidThen,
  }));
