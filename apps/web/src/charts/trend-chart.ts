import type { ChartConfiguration } from 'chart.js';
import { drawn } from './chart';
import type { Drawn, Ink } from './chart';
import { centreLine, intervals, plainAxis } from './marks';
import type { Range } from './marks';

export type TrendMark = {
  readonly week: string;
  readonly counted: string;
  readonly share: number | null;
  readonly range: Range;
};
export type TrendRows = {
  readonly marks: readonly TrendMark[];
  readonly overall: number | null;
  readonly percent: (share: number) => string;
  readonly choose: (at: number) => void;
};

/** A week in which nothing left has no point: the line stops there, it is not drawn across. */
const configure = ({ marks, overall, percent, choose }: TrendRows, ink: Ink): ChartConfiguration => ({
  type: 'line',
  data: {
    labels: marks.map(({ week, counted }) => [week, counted]),
    datasets: [
      {
        data: marks.map(({ share }) => share),
        borderColor: ink.ink,
        borderWidth: 1.5,
        pointStyle: 'rect',
        pointRadius: 6,
        pointHoverRadius: 8,
        pointBackgroundColor: ink.ink,
        spanGaps: false,
      },
    ],
  },
  options: {
    maintainAspectRatio: false,
    animation: false,
    // A mark at 100 % stands whole, half of it outside the axes.
    clip: false,
    layout: { padding: { top: 12, right: 24 } },
    interaction: { mode: 'nearest', axis: 'x', intersect: false },
    onClick: (_event, [hit]) => {
      if (hit !== undefined) choose(hit.index);
    },
    scales: {
      x: { ...plainAxis(ink), ticks: { ...plainAxis(ink).ticks, maxRotation: 0, autoSkipPadding: 12 } },
      y: {
        ...plainAxis(ink),
        min: 0,
        max: 1,
        ticks: { ...plainAxis(ink).ticks, callback: (share) => percent(Number(share)) },
      },
    },
  },
  plugins: [
    centreLine(overall, ink),
    intervals(
      marks.map(({ range }) => range),
      'y',
      ink,
    ),
  ],
});

export const trendChart = (canvas: HTMLCanvasElement, rows: TrendRows, ink: Ink): Drawn<TrendRows> =>
  drawn(canvas, configure, { rows, ink });
