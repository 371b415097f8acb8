import type { ChartConfiguration } from 'chart.js';
import { drawn } from './chart';
import type { Drawn, Ink } from './chart';
import { plainAxis, rowLabels } from './marks';

export type ParetoMark = { readonly name: string; readonly count: number; readonly label: string };
export type ParetoRows = { readonly marks: readonly ParetoMark[]; readonly choose: (at: number) => void };

/** Longer names are cut at the axis; the table beside has them whole. */
const LONGEST_NAME = 34;
const short = (name: string): string =>
  name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;

const configure = ({ marks, choose }: ParetoRows, ink: Ink): ChartConfiguration => ({
  type: 'bar',
  data: {
    labels: marks.map(({ name }) => short(name)),
    datasets: [
      {
        data: marks.map(({ count }) => count),
        backgroundColor: ink.ink,
        hoverBackgroundColor: ink.chalk,
        barPercentage: 0.7,
        categoryPercentage: 0.9,
      },
    ],
  },
  options: {
    indexAxis: 'y',
    maintainAspectRatio: false,
    animation: false,
    layout: { padding: { right: 96 } },
    interaction: { mode: 'nearest', axis: 'y', intersect: false },
    onClick: (_event, [hit]) => {
      if (hit !== undefined) choose(hit.index);
    },
    scales: {
      x: { ...plainAxis(ink), beginAtZero: true, ticks: { ...plainAxis(ink).ticks, precision: 0 } },
      y: { ...plainAxis(ink), grid: { display: false }, ticks: { ...plainAxis(ink).ticks, autoSkip: false } },
    },
  },
  plugins: [
    rowLabels(
      marks.map(({ label }) => label),
      ink,
      'bar',
    ),
  ],
});

export const paretoChart = (canvas: HTMLCanvasElement, rows: ParetoRows, ink: Ink): Drawn<ParetoRows> =>
  drawn(canvas, configure, { rows, ink });
