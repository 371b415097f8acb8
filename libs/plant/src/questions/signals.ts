import type { AnswerOf } from '@libs/contracts';
import { CHART } from '@libs/record';
import type { Days, StationDay } from '@libs/views';
import type { Span } from '../told';
import type { Asked } from './asked';
import { chartNoteSays } from './chart-notes';
import { daysOf, weeksOf } from './days';
import { alarmsOf, budgetOf, planOf, windowOf } from './unit-chart';
import type { Budget } from './unit-chart';

type Station = AnswerOf<'signals'>['stations'][number];

/** Every station's chart at a glance. Counters and one short text a station; no section is read by itself. */
export const signalsQuestion =
  (asked: Asked) =>
  async (span: Span): Promise<AnswerOf<'signals'>> => {
    const position = await asked.ledger.head();
    const days = await daysOf(span, asked);
    const window = windowOf(days);
    const [marks, byDay] = await Promise.all([
      asked.views.runs(null, window),
      asked.views.yieldByStationDay(earliest(window, days)),
    ]);
    const stations = grouped(byDay);
    const budget = await budgetOf(asked, marks.size);
    const answers: Station[] = [];
    for (const station of inLineOrder(asked, [...stations.keys()])) {
      const own = { days: stations.get(station) ?? [], marks: marks.get(station) ?? '' };
      answers.push(await stationOf(asked, { station, ...own }, { budget, days, window }));
    }
    return { ...days, position, budget, stations: answers };
  };

const earliest = (window: Days, days: Days): Days => ({
  from: window.from < days.from ? window.from : days.from,
  to: days.to,
});

const grouped = (rows: readonly StationDay[]): ReadonlyMap<string, readonly StationDay[]> => {
  const stations = new Map<string, StationDay[]>();
  for (const row of rows) {
    const known = stations.get(row.station);
    if (known === undefined) stations.set(row.station, [row]);
    else known.push(row);
  }
  return stations;
};

const inLineOrder = ({ plans }: Asked, stations: readonly string[]): readonly string[] => {
  const order = (plans.current()?.rulebook.stations ?? []).map(({ id }) => id);
  const place = (id: string): number => (order.includes(id) ? order.indexOf(id) : order.length);
  return [...stations].sort((a, b) => place(a) - place(b) || (a < b ? -1 : 1));
};

type Of = { readonly station: string; readonly days: readonly StationDay[]; readonly marks: string };

const stationOf = async (
  asked: Asked,
  { station, days: byDay, marks }: Of,
  { budget, days, window }: { readonly budget: Budget; readonly days: Days; readonly window: Days },
): Promise<Station> => {
  const chart = await asked.ledger.state(CHART, station);
  const run = { marks, chart, days: byDay.filter(({ day }) => day >= window.from) };
  const plan = planOf(run, budget);
  const alarms = plan === null ? [] : alarmsOf(run, plan, chartNoteSays(asked, station)).alarms;
  return {
    station,
    name: asked.names.current().station(station),
    plan,
    alarm: alarms.at(-1) ?? null,
    weeks: weeksOf(days).map((week) => {
      const inWeek = byDay.filter(({ day }) => day >= week.from && day <= week.to);
      return {
        from: week.from,
        left: inWeek.reduce((sum, { left }) => sum + left, 0),
        clean: inWeek.reduce((sum, { clean }) => sum + clean, 0),
      };
    }),
  };
};
