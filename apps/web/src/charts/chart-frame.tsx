import { useEffect, useId, useRef } from 'react';
import type { ReactNode } from 'react';
import { useDisplay } from '../look/display';
import { useSpeech } from '../words/words';
import { inkOf } from './chart';
import type { Drawn, Ink } from './chart';
import { csvOf } from './csv';
import { save } from './save';
import './charts.css';

type Props<R> = {
  /** States the finding; the canvas is named by it. */
  readonly title: string;
  readonly says: string;
  readonly rows: R;
  readonly draw: (canvas: HTMLCanvasElement, rows: R, ink: Ink) => Drawn<R>;
  readonly heightPx: number;
  readonly name: string;
  readonly table: readonly (readonly string[])[];
  readonly controls?: ReactNode;
  readonly children: ReactNode;
};

/** Redraws in print's own black and white, and when the device turns dark. */
const MEDIA = ['(prefers-color-scheme: dark)', 'print'] as const;

const useDrawn = <R,>({ rows, draw }: Pick<Props<R>, 'rows' | 'draw'>) => {
  const { theme } = useDisplay();
  const canvas = useRef<HTMLCanvasElement>(null);
  const chart = useRef<Drawn<R> | null>(null);
  const latest = useRef(rows);
  useEffect(() => {
    latest.current = rows;
    const element = canvas.current;
    if (element === null) return;
    if (chart.current === null) chart.current = draw(element, rows, inkOf(element));
    else chart.current.update(rows, inkOf(element));
  }, [rows, draw, theme]);
  useEffect(() => {
    const redraw = (): void => {
      if (canvas.current !== null) chart.current?.update(latest.current, inkOf(canvas.current));
    };
    const watched = MEDIA.map((query) => window.matchMedia(query));
    watched.forEach((media) => media.addEventListener('change', redraw));
    void document.fonts.ready.then(redraw);
    return () => {
      watched.forEach((media) => media.removeEventListener('change', redraw));
      chart.current?.destroy();
      chart.current = null;
    };
  }, []);
  return { canvas, picture: (taken: (image: Blob | null) => void) => chart.current?.picture(taken) };
};

/** Title with the finding, the drawing, the same as a table, and both as files. */
export const ChartFrame = <R,>(props: Props<R>): ReactNode => {
  const { t } = useSpeech();
  const { title, says, name, table, heightPx } = props;
  const { canvas, picture } = useDrawn(props);
  const id = useId();
  const box = useRef<HTMLDivElement>(null);
  useEffect(() => {
    box.current?.style.setProperty('height', `${String(heightPx)}px`);
  }, [heightPx]);
  return (
    <figure className="chart" aria-labelledby={id}>
      <figcaption className="chart-head">
        <h2 id={id}>{title}</h2>
        <p className="quiet">{says}</p>
      </figcaption>
      {props.controls}
      <div className="chart-body">
        <div>
          <div className="chart-canvas" ref={box}>
            <canvas ref={canvas} role="img" aria-label={`${title}. ${says}`} />
          </div>
          <div className="choices no-print">
            <button
              type="button"
              className="button plain"
              onClick={() => save(`${name}.csv`, new Blob([csvOf(table)], { type: 'text/csv' }))}
            >
              {t('chart.csv')}
            </button>
            <button
              type="button"
              className="button plain"
              onClick={() =>
                picture((image) => {
                  if (image !== null) save(`${name}.png`, image);
                })
              }
            >
              {t('chart.png')}
            </button>
          </div>
        </div>
        {props.children}
      </div>
    </figure>
  );
};
