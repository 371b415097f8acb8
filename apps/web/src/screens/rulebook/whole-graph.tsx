import { useMemo } from 'react';
import type { KeyboardEvent, ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import type { Book } from './book';
import { BOX, layOut } from './whole-layout';
import type { Band, Drawn, Edge, EdgeKind, Whole } from './whole-layout';
import { inLines } from './box-text';

type Props = {
  readonly book: Book;
  /** The operation whose lines stand out; empty: none. */
  readonly of: string;
  readonly choose: (id: string) => void;
  /** What a search has found; all else is drawn faintly. */
  readonly found: ReadonlySet<string>;
};

/** The whole line in one drawing: what waits for what, what covers what, and which crews work side by side. */
export const WholeGraph = ({ book, of, choose, found }: Props): ReactNode => {
  const { t } = useSpeech();
  const whole = useMemo(() => layOut(book), [book]);
  const touching = new Set(
    whole.edges.filter((edge) => touches(edge, of)).flatMap(({ from, to }) => [from, to]),
  );
  const { boxes } = whole;
  return (
    <figure className="book-whole" role="group" aria-label={t('book.whole')}>
      {/* Scrolled by hand and by keyboard: boxes in it take the focus. */}
      <div className="book-whole-frame">
        <svg
          width={whole.wide}
          height={whole.high}
          viewBox={`0 0 ${String(whole.wide)} ${String(whole.high)}`}
        >
          {whole.bands.map((band) => (
            <BandView key={band.station} band={band} book={book} wide={whole.wide} />
          ))}
          <Edges whole={whole} of={of} />
          {[...boxes.values()].map((box) => (
            <WholeBox
              key={box.operation.id}
              box={box}
              is={box.operation.id === of ? 'focus' : touching.has(box.operation.id) ? 'near' : ''}
              faint={!found.has(box.operation.id)}
              choose={choose}
            />
          ))}
        </svg>
      </div>
      <figcaption className="stack tight">
        <p>{t('book.whole-says')}</p>
        <Legend />
      </figcaption>
    </figure>
  );
};

const touches = ({ from, to }: Edge, id: string): boolean => from === id || to === id;

const KINDS = { needs: 'book.edge-needs', covers: 'book.edge-covers', expects: 'book.edge-expects' } as const;

const Legend = (): ReactNode => {
  const { t } = useSpeech();
  return (
    <ul className="row small book-legend">
      {(Object.keys(KINDS) as readonly EdgeKind[]).map((is) => (
        <li key={is} className="row">
          <svg width="44" height="12" aria-hidden="true">
            <path className={`book-edge ${is}`} d="M0 6H44" />
          </svg>
          {t(KINDS[is])}
        </li>
      ))}
      <li className="row">
        <svg width="44" height="16" aria-hidden="true">
          <path className="book-all-due" d="M2 8H42" />
        </svg>
        {t('book.edge-all')}
      </li>
    </ul>
  );
};

const BandView = ({
  band,
  book,
  wide,
}: {
  readonly band: Band;
  readonly book: Book;
  readonly wide: number;
}): ReactNode => {
  const { say } = useSpeech();
  const station = book.stations.find(({ id }) => id === band.station);
  const crew = (id: string): string => {
    const known = book.crews.find((one) => one.id === id);
    return known === undefined ? id : say(known.name);
  };
  return (
    <g>
      <rect className="book-band" x={0} y={band.y} width={wide} height={band.high} />
      <text className="book-band-name" x={BOX.lane} y={band.y + BOX.head - 8}>
        {station === undefined ? band.station : say(station.name)}
      </text>
      {band.lanes.map((lane) => (
        <text key={lane.crew} className="book-lane-name" x={lane.x} y={band.y + BOX.head + BOX.foot - 10}>
          {crew(lane.crew)}
        </text>
      ))}
    </g>
  );
};

/** Those of the chosen operation are drawn last, over the others. */
const Edges = ({ whole, of }: { readonly whole: Whole; readonly of: string }): ReactNode => {
  const paths = whole.edges.flatMap((edge) => {
    const [from, to] = [whole.boxes.get(edge.from), whole.boxes.get(edge.to)];
    return from === undefined || to === undefined ? [] : [{ edge, d: curve(from, to) }];
  });
  const ordered = [
    ...paths.filter(({ edge }) => !touches(edge, of)),
    ...paths.filter(({ edge }) => touches(edge, of)),
  ];
  return ordered.map(({ edge, d }) => (
    <path
      key={`${edge.from} ${edge.to}`}
      className={`book-edge ${edge.is} ${of === '' ? '' : touches(edge, of) ? 'near' : 'far'}`}
      d={d}
    />
  ));
};

const curve = (from: Drawn, to: Drawn): string => {
  const [x1, y1] = [from.x + BOX.wide / 2, from.y + BOX.high];
  const [x2, y2] = [to.x + BOX.wide / 2, to.y];
  const bend = Math.max(BOX.high, Math.abs(y2 - y1) / 3);
  return `M${String(x1)} ${String(y1)}C${String(x1)} ${String(y1 + bend)} ${String(x2)} ${String(y2 - bend)} ${String(x2)} ${String(y2)}`;
};

type BoxProps = {
  readonly box: Drawn;
  readonly is: 'focus' | 'near' | '';
  readonly faint: boolean;
  readonly choose: (id: string) => void;
};

const WholeBox = ({ box, is, faint, choose }: BoxProps): ReactNode => {
  const { say } = useSpeech();
  const { operation, x, y } = box;
  const pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    choose(operation.id);
  };
  const lines = inLines(say(operation.name));
  return (
    <g
      className={`book-box ${is} ${faint ? 'faint' : ''}`}
      transform={`translate(${String(x)} ${String(y)})`}
      role="button"
      tabIndex={0}
      aria-label={say(operation.name)}
      aria-current={is === 'focus' ? 'true' : undefined}
      onClick={() => choose(operation.id)}
      onKeyDown={pressed}
    >
      <title>{say(operation.name)}</title>
      <rect width={BOX.wide} height={BOX.high} />
      {operation.allDue && <path className="book-all-due" d={`M2 0H${String(BOX.wide - 2)}`} />}
      {lines.map((line, row) => (
        <text key={line} x={10} y={lines.length === 1 ? 31 : 22 + row * 19}>
          {line}
        </text>
      ))}
    </g>
  );
};
