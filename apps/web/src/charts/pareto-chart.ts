import type { ChartConfiguration } from 'chart.js';
import { drawn } from './chart';
import type { Drawn, Ink } from './chart';
import { namedRows, plainAxis, rowLabels } from './marks';

export type ParetoMark = { readonly name: string; readonly count: number; readonly label: string };
export type ParetoRows = { readonly marks: readonly ParetoMark[]; readonly choose: (at: number) => void };

const configure = ({ marks, choose }: ParetoRows, ink: Ink): ChartConfiguration => ({
  type: 'bar',
  data: {
    labels: marks.map(({ name }) => name),
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
      y: {
        ...namedRows(
          marks.map(({ name }) => name),
          ink,
        ),
        grid: { display: false },
      },
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
