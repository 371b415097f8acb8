import type { ChartConfiguration } from 'chart.js';
import { drawn } from './chart';
import type { Drawn, Ink } from './chart';
import { intervals, namedRows, plainAxis, rowLabels } from './marks';
import type { Range } from './marks';

export type YieldMark = {
  readonly name: string;
  readonly counted: string;
  readonly seen: number | null;
  readonly escapes: number | null;
  readonly range: Range;
};
export type YieldRows = {
  readonly marks: readonly YieldMark[];
  readonly percent: (share: number) => string;
  readonly choose: (at: number) => void;
};

/** Points may start above nought, where bars may not: the axis opens at the tenth below the lowest mark. */
const lowestTenth = (marks: readonly YieldMark[]): number => {
  const all = marks.flatMap(({ seen, escapes, range }) =>
    [seen, escapes, range.low].filter((share) => share !== null),
  );
  return Math.floor(Math.min(1, ...all) * 10) / 10;
};

const point = (ink: Ink, filled: boolean, radius: number) => ({
  pointStyle: 'rect' as const,
  pointRadius: radius,
  pointHoverRadius: radius + 2,
  pointBorderWidth: 2,
  pointBorderColor: ink.ink,
  pointBackgroundColor: filled ? ink.ink : ink.paper,
  showLine: false,
});

const configure = ({ marks, percent, choose }: YieldRows, ink: Ink): ChartConfiguration => ({
  type: 'line',
  data: {
    labels: marks.map(({ name }) => name),
    datasets: [
      { data: marks.map(({ seen }) => seen), ...point(ink, true, 6) },
      { data: marks.map(({ escapes }) => escapes), ...point(ink, false, 8) },
    ],
  },
  options: {
    indexAxis: 'y',
    maintainAspectRatio: false,
    animation: false,
    // A mark at 100 % stands whole, half of it outside the axes.
    clip: false,
    layout: { padding: { right: 120, top: 8 } },
    interaction: { mode: 'nearest', axis: 'y', intersect: false },
    onClick: (_event, [hit]) => {
      if (hit !== undefined) choose(hit.index);
    },
    scales: {
      x: {
        ...plainAxis(ink),
        min: lowestTenth(marks),
        max: 1,
        ticks: { ...plainAxis(ink).ticks, callback: (share) => percent(Number(share)) },
      },
      y: namedRows(
        marks.map(({ name }) => name),
        ink,
      ),
    },
  },
  plugins: [
    intervals(
      marks.map(({ range }) => range),
      'x',
      ink,
    ),
    rowLabels(
      marks.map(({ counted }) => counted),
      ink,
      'edge',
    ),
  ],
});

export const yieldChart = (canvas: HTMLCanvasElement, rows: YieldRows, ink: Ink): Drawn<YieldRows> =>
  drawn(canvas, configure, { rows, ink });
