import type { ChartConfiguration } from 'chart.js';
import { drawn } from './chart';
import type { Drawn, Ink } from './chart';
import { centreLine, plainAxis } from './marks';

export type ScoreMark = { readonly day: string; readonly score: number; readonly alarm: boolean };
export type ScoreRows = {
  readonly marks: readonly ScoreMark[];
  readonly limit: number;
  readonly choose: (at: number) => void;
};

/** The score after each day, against the limit at which it raises an alarm. */
const configure = ({ marks, limit, choose }: ScoreRows, ink: Ink): ChartConfiguration => ({
  type: 'line',
  data: {
    labels: marks.map(({ day }) => day),
    datasets: [
      {
        data: marks.map(({ score }) => score),
        borderColor: ink.ink,
        borderWidth: 1.5,
        stepped: 'after',
        pointStyle: marks.map(({ alarm }) => (alarm ? 'triangle' : 'rect')),
        pointRadius: marks.map(({ alarm }) => (alarm ? 9 : 2)),
        pointBackgroundColor: marks.map(({ alarm }) => (alarm ? ink.refused : ink.ink)),
        pointBorderColor: ink.ink,
      },
    ],
  },
  options: {
    maintainAspectRatio: false,
    animation: false,
    clip: false,
    layout: { padding: { top: 12, right: 24 } },
    interaction: { mode: 'nearest', axis: 'x', intersect: false },
    onClick: (_event, [hit]) => {
      if (hit !== undefined) choose(hit.index);
    },
    scales: {
      x: { ...plainAxis(ink), ticks: { ...plainAxis(ink).ticks, maxRotation: 0, autoSkipPadding: 16 } },
      y: {
        ...plainAxis(ink),
        min: 0,
        suggestedMax: limit * 1.15,
        ticks: { ...plainAxis(ink).ticks, precision: 0 },
      },
    },
  },
  plugins: [centreLine(limit, ink)],
});

export const scoreChart = (canvas: HTMLCanvasElement, rows: ScoreRows, ink: Ink): Drawn<ScoreRows> =>
  drawn(canvas, configure, { rows, ink });
