import {
  BarController,
  BarElement,
  CategoryScale,
  Chart,
  LineController,
  LineElement,
  LinearScale,
  PointElement,
} from 'chart.js';
import type { ChartConfiguration } from 'chart.js';

/** Only what is drawn here: a line, points, bars, and their two scales. */
Chart.register(
  BarController,
  BarElement,
  CategoryScale,
  LineController,
  LineElement,
  LinearScale,
  PointElement,
);

/** Colours as roles, told to a chart by the page it stands on. */
export type Ink = {
  readonly ink: string;
  readonly paper: string;
  readonly quiet: string;
  readonly line: string;
  readonly chalk: string;
  readonly refused: string;
  readonly face: string;
  readonly mono: string;
};

/** A drawn chart: new rows or new colours redraw it, `destroy` gives the canvas back. */
export type Drawn<R> = {
  readonly update: (rows: R, ink: Ink) => void;
  readonly destroy: () => void;
  /** The drawing as a PNG. By the canvas itself: a data address would need a wider content security policy. */
  readonly picture: (taken: (image: Blob | null) => void) => void;
};

/** Draws from nothing each time: a few dozen marks, and no trace of the rows before. */
export const drawn = <R>(
  canvas: HTMLCanvasElement,
  configure: (rows: R, ink: Ink) => ChartConfiguration,
  first: { readonly rows: R; readonly ink: Ink },
): Drawn<R> => {
  let chart = new Chart(canvas, configure(first.rows, first.ink));
  return {
    update: (rows, ink) => {
      chart.destroy();
      chart = new Chart(canvas, configure(rows, ink));
    },
    destroy: () => chart.destroy(),
    picture: (taken) => canvas.toBlob(taken, 'image/png'),
  };
};

export const inkOf = (element: Element): Ink => {
  const style = getComputedStyle(element);
  const role = (name: string): string => style.getPropertyValue(`--${name}`).trim();
  return {
    ink: role('ink'),
    paper: role('paper'),
    quiet: role('quiet'),
    line: role('line'),
    chalk: role('chalk'),
    refused: role('refused'),
    face: role('face'),
    mono: role('mono'),
  };
};
