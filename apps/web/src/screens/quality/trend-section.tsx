import type { AnswerOf } from '@libs/contracts';
import { useCallback, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { ChartFrame } from '../../charts/chart-frame';
import { trendChart } from '../../charts/trend-chart';
import type { TrendRows } from '../../charts/trend-chart';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { PassagesBehindFigure } from './behind';
import type { PassagesBehind } from './behind';
import { FigureTable } from './figure-table';
import type { Span } from './span';
import { useAgainSoon } from './use-again-soon';
import { useFigures } from './use-figures';

type Trend = AnswerOf<'yieldTrend'>;
type Point = Trend['points'][number];
const HEIGHT_PX = 320;
const COLUMNS = ['trend.week', 'yield.left', 'yield.seen', 'yield.interval'] as const;

const pooled = (points: readonly Point[]): { clean: number; left: number; share: number | null } => {
  const clean = points.reduce((sum, point) => sum + point.clean, 0);
  const left = points.reduce((sum, point) => sum + point.left, 0);
  return { clean, left, share: left === 0 ? null : clean / left };
};

const useTitle = (points: readonly Point[], station: string): string => {
  const { t } = useSpeech();
  const { percent } = useFigures();
  const { clean, left } = pooled(points);
  const shares = points.flatMap(({ firstPass }) => (firstPass === null ? [] : [firstPass]));
  if (left === 0) return t('trend.none', { station });
  return t('trend.title', {
    station,
    clean,
    left,
    low: percent(Math.min(...shares)),
    high: percent(Math.max(...shares)),
  });
};

const useCells = () => {
  const figures = useFigures();
  return (point: Point): readonly string[] => [
    figures.day(point.from),
    String(point.left),
    point.left === 0 ? '–' : `${figures.percent(point.firstPass)} · ${figures.of(point.clean, point.left)}`,
    point.left === 0 ? '' : figures.range(point.firstPassInterval),
  ];
};

type DrawnProps = { readonly trend: Trend; readonly name: string; readonly controls: ReactNode };
const TrendDrawn = ({ trend, name, controls }: DrawnProps): ReactNode => {
  const { t } = useSpeech();
  const figures = useFigures();
  const cells = useCells();
  const [behind, setBehind] = useState<PassagesBehind | null>(null);
  const { points, station } = trend;
  const show = useCallback(
    ({ from, to }: Point): void => setBehind({ station, name, which: 'left', span: { from, to } }),
    [station, name],
  );
  const rows = useMemo<TrendRows>(
    () => ({
      marks: points.map((point) => ({
        week: figures.shortDay(point.from),
        counted: point.left === 0 ? '' : `${String(point.clean)}/${String(point.left)}`,
        share: point.firstPass,
        range: point.firstPassInterval,
      })),
      overall: pooled(points).share,
      percent: figures.percent,
      choose: (at) => {
        const point = points[at];
        if (point !== undefined) show(point);
      },
    }),
    [points, show, figures],
  );
  return (
    <>
      <ChartFrame
        title={useTitle(points, name)}
        says={t('trend.says')}
        rows={rows}
        draw={trendChart}
        heightPx={HEIGHT_PX}
        name={`trend-${station}`}
        table={[COLUMNS.map((column) => t(column)), ...points.map(cells)]}
        controls={controls}
      >
        <FigureTable
          name={t('trend.week')}
          columns={COLUMNS.map((column) => t(column))}
          rows={points.map((point) => ({ key: point.from, cells: cells(point), open: () => show(point) }))}
          short
        />
      </ChartFrame>
      {behind !== null && <PassagesBehindFigure key={behind.span.from} behind={behind} change={setBehind} />}
    </>
  );
};

type Props = {
  readonly station: string;
  readonly stations: readonly { readonly id: string; readonly name: string }[];
  readonly span: Span;
  readonly choose: (station: string) => void;
};

/** One station, week by week. */
export const TrendSection = ({ station, stations, span, choose }: Props): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('yieldTrend', { station, ...span });
  useAgainSoon(again);
  const controls = (
    <label className="field trend-station no-print">
      <span className="field-name">{t('trend.station')}</span>
      <select className="input" value={station} onChange={(event) => choose(event.target.value)}>
        {stations.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (answer === null) return controls;
  return (
    <TrendDrawn
      key={station}
      trend={answer}
      name={stations.find(({ id }) => id === station)?.name ?? station}
      controls={controls}
    />
  );
};
