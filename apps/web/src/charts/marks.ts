import type { Chart, Plugin, Scale } from 'chart.js';
import type { Ink } from './chart';

export type Range = { readonly low: number | null; readonly high: number | null };

const stroke = (
  context: CanvasRenderingContext2D,
  [fromX, fromY]: [number, number],
  [toX, toY]: [number, number],
): void => {
  context.beginPath();
  context.moveTo(fromX, fromY);
  context.lineTo(toX, toY);
  context.stroke();
};

/** A thin bar from low to high behind each point: how far chance alone may have moved it. */
export const intervals = (ranges: readonly Range[], axis: 'x' | 'y', ink: Ink): Plugin => ({
  id: 'intervals',
  beforeDatasetsDraw: ({ ctx, scales }: Chart) => {
    const { x, y } = scales;
    if (x === undefined || y === undefined) return;
    ctx.save();
    ctx.strokeStyle = ink.quiet;
    ctx.lineWidth = 2;
    ranges.forEach(({ low, high }, at) => {
      if (low === null || high === null) return;
      if (axis === 'x')
        stroke(
          ctx,
          [x.getPixelForValue(low), y.getPixelForValue(at)],
          [x.getPixelForValue(high), y.getPixelForValue(at)],
        );
      else
        stroke(
          ctx,
          [x.getPixelForValue(at), y.getPixelForValue(low)],
          [x.getPixelForValue(at), y.getPixelForValue(high)],
        );
    });
    ctx.restore();
  },
});

/** Words straight at the mark, instead of a legend: `17 of 19` at the right end of its row. */
export const rowLabels = (labels: readonly string[], ink: Ink, end: 'edge' | 'bar'): Plugin => ({
  id: 'row-labels',
  afterDatasetsDraw: (chart: Chart) => {
    const { ctx, chartArea, scales } = chart;
    const { y } = scales;
    if (y === undefined) return;
    ctx.save();
    ctx.fillStyle = ink.ink;
    ctx.font = `14px ${ink.mono}`;
    ctx.textBaseline = 'middle';
    labels.forEach((label, at) => {
      const bar = chart.getDatasetMeta(0).data[at];
      const x = end === 'bar' && bar !== undefined ? bar.x + 6 : chartArea.right + 16;
      ctx.fillText(label, x, y.getPixelForValue(at));
    });
    ctx.restore();
  },
});

/** The centre line in chalk blue: what the whole span gave. */
export const centreLine = (value: number | null, ink: Ink): Plugin => ({
  id: 'centre-line',
  beforeDatasetsDraw: ({ ctx, chartArea, scales }: Chart) => {
    const { y } = scales;
    if (y === undefined || value === null) return;
    ctx.save();
    ctx.strokeStyle = ink.chalk;
    ctx.lineWidth = 2;
    stroke(ctx, [chartArea.left, y.getPixelForValue(value)], [chartArea.right, y.getPixelForValue(value)]);
    ctx.restore();
  },
});

/** Axis text and lines, the same in every chart. */
export const plainAxis = (ink: Ink) => ({
  border: { color: ink.ink },
  grid: { color: ink.line },
  ticks: { color: ink.ink, font: { family: ink.face, size: 14 } },
});

/** Longer names than this are cut; the table beside has them whole. On a phone the drawing needs the room more. */
const LONGEST_NAME = { wide: 36, narrow: 20 } as const;
const NARROW_PX = 520;

/** Names beside their rows: as much room as the longest needs, since the library would cut them at the edge. */
export const namedRows = (names: readonly string[], ink: Ink) => {
  const shortened = (chartPx: number): readonly string[] => {
    const longest = chartPx < NARROW_PX ? LONGEST_NAME.narrow : LONGEST_NAME.wide;
    return names.map((name) => (name.length > longest ? `${name.slice(0, longest - 1)}…` : name));
  };
  return {
    ...plainAxis(ink),
    afterFit: (axis: Scale): void => {
      axis.ctx.save();
      axis.ctx.font = `14px ${ink.face}`;
      const widths = shortened(axis.chart.width).map((name) => axis.ctx.measureText(name).width);
      axis.ctx.restore();
      axis.width = Math.ceil(Math.max(0, ...widths)) + 16;
    },
    ticks: {
      ...plainAxis(ink).ticks,
      autoSkip: false,
      callback(this: Scale, _value: number | string, at: number): string {
        return shortened(this.chart.width)[at] ?? '';
      },
    },
  };
};
