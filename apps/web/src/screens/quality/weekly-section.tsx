import type { AnswerOf } from '@libs/contracts';
import { useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { ChartFrame } from '../../charts/chart-frame';
import { controlChart } from '../../charts/control-chart';
import type { ControlRows } from '../../charts/control-chart';
import { useSpeech } from '../../words/words';
import { PassagesBehindFigure } from './behind';
import type { PassagesBehind } from './behind';
import { FigureTable } from './figure-table';
import { useFigures } from './use-figures';

type Chart = AnswerOf<'stationChart'>;
type Point = Chart['weekly']['points'][number];

const HEIGHT_PX = 340;
const COLUMNS = [
  'trend.week',
  'weekly.nonconforming',
  'yield.interval',
  'weekly.limit',
  'weekly.signal',
] as const;
const KINDS = { p: 'weekly.kind.p', 'p-prime': 'weekly.kind.p-prime' } as const;
const WHY = {
  'counts-as-chance': 'weekly.why.counts-as-chance',
  'varies-more-than-chance': 'weekly.why.varies-more-than-chance',
  'too-few-expected': 'weekly.why.too-few-expected',
  'too-few-points': 'weekly.why.too-few-points',
} as const;

/** The name of what a point signals: its rule, or that it is beyond its limits. */
const useSignal = (): ((point: Point) => string | null) => {
  const { t } = useSpeech();
  return ({ beyond, value, center, rules }) => {
    if (beyond) return t((value ?? 0) > (center ?? 0) ? 'weekly.beyond-high' : 'weekly.beyond-low');
    return rules.length === 0 ? null : rules.map(({ rule }) => rule).join(' ');
  };
};

const useCells = (): ((point: Point) => readonly string[]) => {
  const figures = useFigures();
  const signal = useSignal();
  return (point) => [
    figures.day(point.from),
    point.left === 0
      ? '–'
      : `${figures.percent(point.value)} · ${figures.of(point.nonconforming, point.left)}`,
    point.left === 0 ? '' : figures.range(point.interval),
    point.upper === null ? '' : `${figures.percent(point.lower)}–${figures.percent(point.upper)}`,
    signal(point) ?? '',
  ];
};

const useTitle = ({ weekly }: Chart, station: string): string => {
  const { t } = useSpeech();
  const signals = weekly.points.filter(({ beyond, rules }) => beyond || rules.length > 0);
  return t('weekly.title', { station, count: signals.length });
};

const useSays = ({ weekly, budget }: Chart): string => {
  const { t } = useSpeech();
  const { percent } = useFigures();
  const last = weekly.phases.at(-1);
  return [
    t(KINDS[weekly.kind]),
    t(WHY[weekly.why]),
    t('weekly.says', { center: percent(last?.center ?? null) }),
    t('weekly.rules', { rules: t(RULES[budget.rules]), points: Math.round(budget.pointsBetween ?? 0) }),
  ].join(' ');
};
export const RULES = {
  'few-counts': 'rules.few-counts',
  'western-electric': 'rules.western-electric',
  nelson: 'rules.nelson',
} as const;

/** Week by week with limits: up is worse. */
export const WeeklySection = ({
  chart,
  station,
}: {
  readonly chart: Chart;
  readonly station: string;
}): ReactNode => {
  const { t } = useSpeech();
  const figures = useFigures();
  const cells = useCells();
  const signal = useSignal();
  const [behind, setBehind] = useState<PassagesBehind | null>(null);
  const { points } = chart.weekly;
  const show = ({ from, to, nonconforming }: Point): void =>
    setBehind({
      station: chart.station,
      name: station,
      which: nonconforming > 0 ? 'nonconforming' : 'left',
      span: { from, to },
    });
  const rows = useMemo<ControlRows>(
    () => ({
      marks: points.map((point, at) => ({
        label: [
          figures.shortDay(point.from),
          point.left === 0 ? '' : `${String(point.nonconforming)}/${String(point.left)}`,
        ],
        value: point.value,
        range: point.interval,
        center: point.center,
        lower: point.lower,
        upper: point.upper,
        signal: signal(point),
        note: chart.annotations.find(({ day }) => day >= point.from && day <= point.to)?.note ?? null,
        phaseStart: at > 0 && points[at - 1]?.phase !== point.phase,
      })),
      percent: figures.percent,
      choose: (at) => {
        const point = points[at];
        if (point !== undefined) show(point);
      },
    }),
    // `signal` and `show` are made anew at each turn and say the same for the same words and points.
    // eslint-disable-next-line react-hooks/exhaustive-deps
    [points, figures, chart, t],
  );
  return (
    <>
      <ChartFrame
        title={useTitle(chart, station)}
        says={useSays(chart)}
        rows={rows}
        draw={controlChart}
        heightPx={HEIGHT_PX}
        name={`weekly-${chart.station}`}
        table={[COLUMNS.map((column) => t(column)), ...points.map(cells)]}
      >
        <FigureTable
          name={t('weekly.table')}
          columns={COLUMNS.map((column) => t(column))}
          rows={points.map((point) => ({ key: point.from, cells: cells(point), open: () => show(point) }))}
          short
        />
      </ChartFrame>
      {behind !== null && <PassagesBehindFigure key={behind.span.from} behind={behind} change={setBehind} />}
    </>
  );
};
