import type { AnswerOf } from '@libs/contracts';
import { floorDay } from '@libs/kernel';
import { AGENCY_STREAM, PLANT, labelShown } from '@libs/record';
import type { SectionCard } from '@libs/views';
import { AGENCY_ID } from '../agency';
import type { Asked } from './asked';
import { addDays } from './days';
import { fullDefect } from './open-defects';

type Report = AnswerOf<'agencyReport'>;

/** A home is counted in the month in which the last of its sections was labelled: only then is it labelled. */
export const agencyReportQuestion =
  (asked: Asked) =>
  async (month: string): Promise<Report> => {
    const { ledger, views, names } = asked;
    const { opened } = await ledger.state(PLANT, 'plant');
    const days = { from: `${month}-01`, to: lastDayOf(month) };
    const labelled = await labelledIn(await views.labelledBetween(days), days, asked);
    const { visits } = await ledger.state(AGENCY_STREAM, AGENCY_ID);
    const failures = (await views.agencyDefects(days)).map((row) => fullDefect(row, names.current()));
    return {
      month,
      plant: opened?.name ?? '',
      labelled: {
        single: labelled.filter(({ sections }) => sections === 1).length,
        multi: labelled.filter(({ sections }) => sections > 1).length,
        sections: labelled.reduce((sum, { sections }) => sum + sections, 0),
      },
      homes: labelled,
      visits: visits
        .filter(({ day }) => day >= days.from && day <= days.to)
        .map(({ day, by, stations }) => ({ day, by: names.person(by), stations: stations.length })),
      failures: failures.map(({ home, serial, occurredAt, says, charged, state }) => ({
        home,
        serial,
        day: floorDay(occurredAt),
        says,
        charged,
        state,
      })),
      homesWithFailures: new Set(failures.map(({ home }) => home)).size,
    };
  };

const MOST_DAYS = 31;

/** The day before the first of the next month. */
const lastDayOf = (month: string): string => {
  const inNext = addDays(`${month}-01`, MOST_DAYS);
  return addDays(`${inNext.slice(0, month.length)}-01`, -1);
};

const labelledIn = async (
  cards: readonly SectionCard[],
  { from, to }: { readonly from: string; readonly to: string },
  { views }: Asked,
): Promise<Report['homes']> => {
  const homes: Report['homes'] = [];
  for (const home of new Set(cards.map((card) => card.home))) {
    const sections = (await views.cardsOfHome(home)).filter(({ kind }) => kind === 'section');
    const days = sections.flatMap(({ labelledAt }) => (labelledAt === null ? [] : [floorDay(labelledAt)]));
    const last = days.reduce((latest, day) => (day > latest ? day : latest), '');
    if (days.length < sections.length || last < from || last > to) continue;
    homes.push({
      home,
      model: sections[0]?.model ?? '',
      sections: sections.length,
      labels: sections.flatMap(({ label }) => (label === null ? [] : [labelShown(label)])),
      labelledOn: last,
    });
  }
  return homes.sort((one, other) => (one.labelledOn < other.labelledOn ? -1 : 1));
};
