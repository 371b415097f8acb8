import type { AnswerOf } from '@libs/contracts';
import { AGENCY_STREAM, PLANT, RED_TAG } from '@libs/record';
import type { Agency, Observation } from '@libs/record';
import type { FullDefectRow, SectionCard } from '@libs/views';
import { AGENCY_ID } from '../agency';
import type { Asked } from './asked';
import { addDays, dayAt } from './days';
import { holdRow } from './holds';
import { fullDefect } from './open-defects';

type AgencyAnswer = AnswerOf<'agency'>;

const IN_THE_PLANT = ['ordered', 'on-line', 'pulled'];
const FAILURES_SHOWN = 200;
const VISITS_SHOWN = 40;

/** What the inspection agency looks at first: what is open, what it has tagged, and what it has not seen yet. */
export const agencyQuestion = (asked: Asked) => async (): Promise<AgencyAnswer> => {
  const { ledger, views } = asked;
  const today = await todayAt(asked);
  const agency = await ledger.state(AGENCY_STREAM, AGENCY_ID);
  const cards = await views.cards(IN_THE_PLANT);
  const bySerial = new Map(cards.map((card) => [card.serial, card]));
  const failures = (await views.openDefects('nonconformance', FAILURES_SHOWN)).filter(({ serial }) =>
    bySerial.has(serial),
  );
  return {
    today,
    failures: failures.map((row) => ({
      ...fullDefect(row, asked.names.current()),
      station: bySerial.get(row.serial)?.station ?? null,
    })),
    tags: (await views.heldCards()).flatMap((card) =>
      card.holds
        .filter(({ reason }) => reason === RED_TAG)
        .map((hold) => holdRow(card, hold, asked.names.ofRevision(card.revision))),
    ),
    homes: homesOf(cards.filter(({ stage }) => stage !== 'ordered')),
    observations: agency.observations.map((one) => observationSays(one, today, asked)).reverse(),
    repeated: repeatedAt(await views.agencyDefects({ from: addDays(today, -LATELY_DAYS), to: today })),
    ...visitsOf(agency, asked),
  };
};

const todayAt = async ({ ledger, clock }: Asked): Promise<string> => {
  const { opened } = await ledger.state(PLANT, 'plant');
  return dayAt(clock(), opened?.zone ?? 'UTC');
};

/** Failures this long ago still say something of how a station works now: about one visit's round of all phases. */
const LATELY_DAYS = 30;
/** Failures on two homes at one station are a repetition. */
const HOMES_THAT_REPEAT = 2;

/** Stations the agency is to look at more often: failures on more than one home lately (24 CFR 3282.362(c)(1)). */
export const repeatedAt = (failures: readonly FullDefectRow[]): AgencyAnswer['repeated'] => {
  const stations = new Map<string, FullDefectRow[]>();
  for (const row of failures) {
    if (row.charged !== null) stations.set(row.charged, [...(stations.get(row.charged) ?? []), row]);
  }
  return [...stations]
    .map(([station, rows]) => ({
      station,
      homes: new Set(rows.map(({ home }) => home)).size,
      failures: rows.length,
      since: rows.map(({ occurredAt }) => occurredAt).reduce((one, other) => (other < one ? other : one)),
    }))
    .filter(({ homes }) => homes >= HOMES_THAT_REPEAT)
    .sort((one, other) => other.homes - one.homes);
};

const homesOf = (cards: readonly SectionCard[]): AgencyAnswer['homes'] => {
  const homes = new Map<string, SectionCard[]>();
  for (const card of cards) homes.set(card.home, [...(homes.get(card.home) ?? []), card]);
  return [...homes].map(([home, sections]) => ({
    home,
    model: sections[0]?.model ?? '',
    sections: sections.map(({ serial, station, seen }) => ({ serial, station, seen: [...seen] })),
    seen: sections.some(({ seen }) => seen.length > 0),
  }));
};

const PLACE = { stream: `${AGENCY_STREAM.name}/${AGENCY_ID}`, field: 'note' } as const;

const observationSays = (
  one: Observation,
  today: string,
  { unsealed, names }: Asked,
): AgencyAnswer['observations'][number] => ({
  observation: one.observation,
  about: one.about,
  subject: one.subject,
  rule: one.rule,
  dueOn: one.dueOn,
  note: unsealed(one.note, PLACE),
  at: one.at,
  by: names.person(one.by),
  standing: one.standing,
  overdue: one.standing === 'open' && one.dueOn !== null && one.dueOn < today,
  answers: one.answers.map(({ note, by, at }) => ({
    note: unsealed(note, PLACE),
    by: names.person(by),
    at,
  })),
});

const visitsOf = (
  { visits }: Agency,
  { names }: Asked,
): Pick<AgencyAnswer, 'visits' | 'lastStorage' | 'lastEquipment'> => {
  const last = (which: 'storage' | 'equipment'): string | null =>
    visits
      .filter((visit) => visit[which])
      .map(({ day }) => day)
      .reduce<string | null>((latest, day) => (latest === null || day > latest ? day : latest), null);
  return {
    visits: visits
      .slice(-VISITS_SHOWN)
      .reverse()
      .map(({ stations, by, ...visit }) => ({ ...visit, stations: [...stations], by: names.person(by) })),
    lastStorage: last('storage'),
    lastEquipment: last('equipment'),
  };
};
