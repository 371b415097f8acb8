import type { Chart, ChartConfiguration, Plugin } from 'chart.js';
import { drawn } from './chart';
import type { Drawn, Ink } from './chart';
import { intervals, plainAxis } from './marks';
import type { Range } from './marks';

export type ControlMark = {
  readonly label: readonly string[];
  readonly value: number | null;
  readonly range: Range;
  readonly center: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** A word at the point: what it signals. Null: nothing. */
  readonly signal: string | null;
  /** A word at the foot: what happened then. */
  readonly note: string | null;
  /** The first point of a phase after the first. */
  readonly phaseStart: boolean;
};
export type ControlRows = {
  readonly marks: readonly ControlMark[];
  readonly percent: (share: number) => string;
  readonly choose: (at: number) => void;
};

type Pen = { readonly colour: string; readonly width: number; readonly dash: readonly number[] };

/** A level for each point, drawn half a step to both sides of it: limits step where the subgroup size changes. */
const steps = (levels: readonly (number | null)[], { colour, width, dash }: Pen): Plugin => ({
  id: `steps-${colour}-${String(width)}-${String(levels[0])}`,
  beforeDatasetsDraw: ({ ctx, scales }: Chart) => {
    const { x, y } = scales;
    if (x === undefined || y === undefined) return;
    const half = (x.getPixelForValue(1) - x.getPixelForValue(0)) / 2;
    ctx.save();
    ctx.strokeStyle = colour;
    ctx.lineWidth = width;
    ctx.setLineDash([...dash]);
    levels.forEach((level, at) => {
      if (level === null) return;
      const [middle, height] = [x.getPixelForValue(at), y.getPixelForValue(level)];
      ctx.beginPath();
      ctx.moveTo(middle - half, height);
      ctx.lineTo(middle + half, height);
      ctx.stroke();
    });
    ctx.restore();
  },
});

/** A phase begins at a vertical line; a note stands at the foot as a flag. */
const moments = (marks: readonly ControlMark[], ink: Ink): Plugin => ({
  id: 'moments',
  afterDatasetsDraw: ({ ctx, chartArea, scales }: Chart) => {
    const { x } = scales;
    if (x === undefined) return;
    const half = (x.getPixelForValue(1) - x.getPixelForValue(0)) / 2;
    ctx.save();
    marks.forEach(({ phaseStart, note }, at) => {
      const middle = x.getPixelForValue(at);
      ctx.strokeStyle = ink.ink;
      ctx.lineWidth = 1.5;
      if (phaseStart) {
        ctx.beginPath();
        ctx.moveTo(middle - half, chartArea.top);
        ctx.lineTo(middle - half, chartArea.bottom);
        ctx.stroke();
      }
      if (note !== null) {
        ctx.fillStyle = ink.chalk;
        ctx.beginPath();
        ctx.moveTo(middle, chartArea.bottom);
        ctx.lineTo(middle, chartArea.bottom - 20);
        ctx.lineTo(middle + 12, chartArea.bottom - 14);
        ctx.lineTo(middle, chartArea.bottom - 8);
        ctx.fill();
      }
    });
    ctx.restore();
  },
});

/** What a point signals, as a word above it. */
const signalWords = (marks: readonly ControlMark[], ink: Ink): Plugin => ({
  id: 'signal-words',
  afterDatasetsDraw: ({ ctx, chartArea, scales }: Chart) => {
    const { x, y } = scales;
    if (x === undefined || y === undefined) return;
    ctx.save();
    ctx.fillStyle = ink.refused;
    ctx.font = `700 14px ${ink.face}`;
    ctx.textAlign = 'center';
    marks.forEach(({ signal, value }, at) => {
      if (signal === null || value === null) return;
      ctx.fillText(
        signal,
        x.getPixelForValue(at),
        Math.max(chartArea.top + 12, y.getPixelForValue(value) - 14),
      );
    });
    ctx.restore();
  },
});

/** Open above the highest that is drawn: small shares need the room, and 0 stays in sight. */
const topOf = (marks: readonly ControlMark[]): number => {
  const highest = Math.max(
    0.05,
    ...marks.flatMap(({ value, upper, range }) => [
      value ?? 0,
      upper ?? 0,
      Math.min(range.high ?? 0, 2 * (upper ?? 1)),
    ]),
  );
  return Math.min(1, Math.ceil(highest * 20) / 20);
};

const configure = ({ marks, percent, choose }: ControlRows, ink: Ink): ChartConfiguration => {
  const isSignal = marks.map(({ signal }) => signal !== null);
  return {
    type: 'line',
    data: {
      labels: marks.map(({ label }) => [...label]),
      datasets: [
        {
          data: marks.map(({ value }) => value),
          borderColor: ink.ink,
          borderWidth: 1.5,
          pointStyle: isSignal.map((signal) => (signal ? 'triangle' : 'rect')),
          pointRadius: isSignal.map((signal) => (signal ? 9 : 5)),
          pointHoverRadius: 10,
          pointBackgroundColor: isSignal.map((signal) => (signal ? ink.refused : ink.ink)),
          pointBorderColor: ink.ink,
          spanGaps: false,
        },
      ],
    },
    options: {
      maintainAspectRatio: false,
      animation: false,
      clip: false,
      layout: { padding: { top: 16, right: 24 } },
      interaction: { mode: 'nearest', axis: 'x', intersect: false },
      onClick: (_event, [hit]) => {
        if (hit !== undefined) choose(hit.index);
      },
      scales: {
        x: { ...plainAxis(ink), ticks: { ...plainAxis(ink).ticks, maxRotation: 0, autoSkipPadding: 12 } },
        y: {
          ...plainAxis(ink),
          min: 0,
          max: topOf(marks),
          ticks: { ...plainAxis(ink).ticks, callback: (share) => percent(Number(share)) },
        },
      },
    },
    plugins: [
      intervals(
        marks.map(({ range }) => range),
        'y',
        ink,
      ),
      steps(
        marks.map(({ center }) => center),
        { colour: ink.chalk, width: 2, dash: [] },
      ),
      steps(
        marks.map(({ upper }) => upper),
        { colour: ink.ink, width: 1.5, dash: [6, 4] },
      ),
      steps(
        marks.map(({ lower }) => (lower === 0 ? null : lower)),
        { colour: ink.quiet, width: 1.5, dash: [6, 4] },
      ),
      moments(marks, ink),
      signalWords(marks, ink),
    ],
  };
};

export const controlChart = (canvas: HTMLCanvasElement, rows: ControlRows, ink: Ink): Drawn<ControlRows> =>
  drawn(canvas, configure, { rows, ink });
