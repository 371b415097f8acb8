import { openPaper } from '../report/paper';
import type { Paper } from '../report/paper';
import { drawWeekly, signalOf } from './drawing';
import type { WeeklyAlarm, WeeklyReport, WeeklyStation } from './weekly-report';
import { WEEKLY_WORDS } from './words';
import type { WeeklyLanguage, WeeklyWords } from './words';

/** Points. With the table under it, a page holds a quarter of a year of weeks. */
const CHART_HEIGHT = 112;
/** What a page has room for; the station's screen has all of it. */
const ALARMS_SHOWN = 2;
const PLACES_SHOWN = 3;
const NOTES_SHOWN = 3;
const SIGNALS_SHOWN = 2;

type Page = {
  readonly paper: Paper;
  readonly words: WeeklyWords;
  readonly language: WeeklyLanguage;
  readonly report: WeeklyReport;
};

const percent = (share: number | null): string =>
  share === null ? '–' : `${String(Math.round(share * 100))} %`;

/** The printable weekly report: one page a station, tagged for screen readers; the same record gives the same bytes. */
export const weeklyReportFile = (report: WeeklyReport, language: WeeklyLanguage): Promise<Uint8Array> => {
  const words = WEEKLY_WORDS[language];
  const paper = openPaper({
    title: words.title(report.plant, report.to),
    language: language === 'es' ? 'es-US' : 'en-US',
    date: new Date(`${report.to}T00:00:00Z`),
    attached: [],
  });
  report.stations.forEach((station, at) => {
    if (at > 0) paper.newPage();
    stationPage({ paper, words, language, report }, station);
  });
  return paper.done((page, of) => words.foot(report.plant, page, of, report.position));
};

const stationPage = (page: Page, station: WeeklyStation): void => {
  const { paper, words, language, report } = page;
  const { left, clean, interval } = station;
  paper.heading(1, station.name[language]);
  const answer = { clean, left, low: percent(interval.low), high: percent(interval.high) };
  paper.text(left === 0 ? words.nothing : words.answer(answer), { bold: true });
  if (left > 0) {
    paper.text(words.more({ escapes: station.cleanWithEscapes, complete: station.complete, left }));
  }
  paper.list(station.alarms.length === 0 ? [words.steady] : alarmsSay(station.alarms, words));
  charted(page, station);
  behind(page, station);
  const whole = [words.span(report.from, report.to), words.rolled(percent(report.rolled))];
  const budget = words.budget(report.budget.falseAlarmsPerMonth, report.budget.charts);
  paper.text([...whole, budget, report.governing[language]].join(' '), { small: true });
};

const alarmsSay = (alarms: readonly WeeklyAlarm[], words: WeeklyWords): readonly string[] => [
  ...alarms.slice(-ALARMS_SHOWN).map((alarm) => alarmSays(alarm, words)),
  ...(alarms.length > ALARMS_SHOWN ? [words.earlier(alarms.length - ALARMS_SHOWN)] : []),
];

const alarmSays = ({ day, change, acknowledged }: WeeklyAlarm, words: WeeklyWords): string => {
  const counted = ({ count, of }: WeeklyAlarm['change']['before']): string => `${count} ${words.of} ${of}`;
  const { since, before, after } = change;
  const says = words.alarm({ day, since, before: counted(before), after: counted(after) });
  const known =
    acknowledged === null ? words.open : words.known(acknowledged.by ?? '–', acknowledged.note ?? '–');
  return `${says} ${known}`;
};

const charted = ({ paper, words }: Page, { points, kind }: WeeklyStation): void => {
  paper.heading(2, words.chart);
  const told = points.map((point) => {
    const signal = signalOf(point, words.beyond);
    return `${point.from}: ${point.nonconforming} ${words.of} ${point.left}${signal === null ? '' : `, ${signal}`}`;
  });
  paper.figure({ alt: `${words.chart}. ${told.join('; ')}`, height: CHART_HEIGHT }, (doc, box) =>
    drawWeekly(doc, box, points),
  );
  paper.text(words.kinds[kind], { small: true });
  const signals = points.flatMap((point) => {
    const signal = signalOf(point, words.beyond);
    return signal === null ? [] : [`${words.week} ${point.from}: ${signal}`];
  });
  if (signals.length > 0) paper.list(signals.slice(-SIGNALS_SHOWN));
};

const behind = ({ paper, words, language }: Page, { defects, found, notes }: WeeklyStation): void => {
  if (defects.length > 0) {
    paper.heading(2, words.defects);
    paper.table(
      [
        { title: words.defect, share: 6 },
        { title: words.count, share: 1 },
        { title: words.share, share: 1 },
      ],
      defects.map(({ says, count, share }) => [says[language], String(count), percent(share)]),
    );
  }
  if (found.length > 0) {
    paper.heading(2, words.found);
    paper.table(
      [
        { title: words.found, share: 6 },
        { title: words.count, share: 1 },
        { title: words.later, share: 2 },
      ],
      placesSay(found, { words, language }),
    );
  }
  if (notes.length > 0) {
    paper.heading(2, words.notes);
    paper.list(notes.slice(-NOTES_SHOWN).map(({ day, note }) => `${day}: ${note ?? '–'}`));
  }
};

/** Most first; the rest of the places on one row. */
const placesSay = (
  found: WeeklyStation['found'],
  { words, language }: Pick<Page, 'words' | 'language'>,
): readonly (readonly string[])[] => {
  const ordered = found.toSorted((a, b) => b.count - a.count);
  const others = ordered.slice(PLACES_SHOWN).reduce((sum, { count }) => sum + count, 0);
  return [
    ...ordered
      .slice(0, PLACES_SHOWN)
      .map(({ name, count, daysLater }) => [
        name?.[language] ?? words.field,
        String(count),
        daysLater === null ? '–' : daysLater.toFixed(1),
      ]),
    ...(others === 0 ? [] : [[words.elsewhere, String(others), '–']]),
  ];
};
