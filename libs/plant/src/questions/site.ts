import type { AnswerOf } from '@libs/contracts';
import { isProven } from '@libs/judge';
import { PLANT } from '@libs/record';
import type { SectionCard } from '@libs/views';
import type { Asked } from './asked';
import { addDays, dayAt } from './days';
import { subjectOf } from './subject';

type Row = AnswerOf<'site'>['homes'][number];

/** From label to the last work at the site it is seldom more than a year (memory); what is older is looked up by serial. */
const SITE_DAYS = 400;
/** More than are under way at once. */
const HOMES_LOOKED_AT = 200;

/**
 * Homes that have left and whose site work is not all in: followed until it is (24 CFR 3282.607, 3282.608). Those
 * that have been on their way longest come first.
 */
export const siteQuestion = (asked: Asked) => async (): Promise<AnswerOf<'site'>> => {
  const { opened } = await asked.ledger.state(PLANT, 'plant');
  const today = dayAt(asked.clock(), opened?.zone ?? 'UTC');
  const cards = await asked.views.labelledBetween({ from: addDays(today, -SITE_DAYS), to: today });
  const homes = [...byHome(cards)].filter(([, own]) => own.every(({ stage }) => stage === 'shipped'));
  const rows: Row[] = [];
  for (const [home, own] of homes.slice(-HOMES_LOOKED_AT)) {
    const row = await siteOf(home, own, asked);
    if (row !== undefined && row.open.length > 0) rows.push(row);
  }
  return { homes: rows.sort((one, other) => (one.shippedAt < other.shippedAt ? -1 : 1)) };
};

const byHome = (cards: readonly SectionCard[]): ReadonlyMap<string, readonly SectionCard[]> => {
  const homes = new Map<string, SectionCard[]>();
  for (const card of cards) homes.set(card.home, [...(homes.get(card.home) ?? []), card]);
  return homes;
};

const siteOf = async (
  home: string,
  sections: readonly SectionCard[],
  asked: Asked,
): Promise<Row | undefined> => {
  const subject = await subjectOf(home, asked);
  if (subject?.plan === null || subject === undefined) return undefined;

  const { plan, state, home: unit } = subject;
  const work = plan.order.flatMap((id) => {
    const operation = plan.operations[id];
    return operation?.scope === 'home' ? [operation] : [];
  });
  const open = work.filter(({ id }) => !isProven(plan, state, id));
  return {
    home,
    model: unit.model,
    destination: unit.destination,
    shippedAt: sections.map(({ since }) => since ?? '').reduce((last, at) => (at > last ? at : last), ''),
    finishedAtSite: unit.design['site_completion'] === 'yes',
    done: work.length - open.length,
    of: work.length,
    open: open.map(({ id, name }) => ({ operation: id, name })),
    holds: state.holds.length,
  };
};
