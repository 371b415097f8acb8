import { useEffect, useRef } from 'react';
import type { KeyboardEvent, ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import type { Book, BookOperation } from './book';

type Props = { readonly book: Book; readonly of: string; readonly choose: (id: string) => void };
type Box = {
  readonly operation: BookOperation;
  readonly x: number;
  readonly y: number;
  readonly hidden: boolean;
};

/** Units of the drawing: three columns, one row a box. */
const WIDE = 256;
const HIGH = 48;
const GAP = 16;
const ACROSS = 80;

/** One operation with what it needs on its left and what needs it on its right; what is covered is dashed. */
export const Neighbours = ({ book, of, choose }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const frame = useRef<HTMLElement>(null);
  const shown = useRef(of);
  useEffect(() => {
    const { current } = frame;
    if (current === null) return;
    // What was chosen stands in the middle: on a phone that is beside the window, or above it.
    current.scrollLeft = (current.scrollWidth - current.clientWidth) / 2;
    if (shown.current !== of) current.scrollIntoView({ block: 'nearest' });
    shown.current = of;
  }, [of]);
  const focus = book.operations.find(({ id }) => id === of);
  if (focus === undefined) return null;

  const hidden = new Set(focus.hides.map(({ operation }) => operation));
  const needs = new Set([...focus.requires.map(({ operation }) => operation), ...focus.expects, ...hidden]);
  const left = book.operations.filter(({ id }) => needs.has(id));
  const right = book.operations.filter((other) => isNeededBy(other, of));
  const rows = Math.max(left.length, right.length, 1);
  const height = rows * (HIGH + GAP) + GAP;
  const middle = { operation: focus, x: WIDE + ACROSS, y: (height - HIGH) / 2, hidden: false };
  const boxes = [
    ...column(left, 0, height, (id) => hidden.has(id)),
    ...column(right, 2 * (WIDE + ACROSS), height, (id) => hides(book, id, of)),
  ];
  return (
    <figure
      ref={frame}
      className="book-graph"
      role="group"
      aria-label={t('book.graph', { name: say(focus.name) })}
    >
      <svg viewBox={`0 0 ${String(3 * WIDE + 2 * ACROSS)} ${String(height)}`}>
        {boxes.map((box) => (
          <Edge
            key={box.operation.id}
            from={box.x === 0 ? box : middle}
            to={box.x === 0 ? middle : box}
            dashed={box.hidden}
          />
        ))}
        <BoxView box={middle} focus choose={choose} />
        {boxes.map((box) => (
          <BoxView key={box.operation.id} box={box} choose={choose} />
        ))}
      </svg>
      <figcaption className="quiet small">{t('book.graph', { name: say(focus.name) })}</figcaption>
    </figure>
  );
};

const hides = (book: Book, cover: string, id: string): boolean =>
  book.operations.some((one) => one.id === cover && one.hides.some(({ operation }) => operation === id));

const isNeededBy = (other: BookOperation, id: string): boolean =>
  other.requires.some(({ operation }) => operation === id) ||
  other.expects.includes(id) ||
  other.hides.some(({ operation }) => operation === id);

const column = (
  operations: readonly BookOperation[],
  x: number,
  height: number,
  isHidden: (id: string) => boolean,
): readonly Box[] => {
  const top = (height - operations.length * (HIGH + GAP) + GAP) / 2;
  return operations.map((operation, row) => ({
    operation,
    x,
    y: top + row * (HIGH + GAP),
    hidden: isHidden(operation.id),
  }));
};

type EdgeProps = {
  readonly from: Pick<Box, 'x' | 'y'>;
  readonly to: Pick<Box, 'x' | 'y'>;
  readonly dashed: boolean;
};

const Edge = ({ from, to, dashed }: EdgeProps): ReactNode => {
  const [x1, y1, x2, y2] = [from.x + WIDE, from.y + HIGH / 2, to.x, to.y + HIGH / 2];
  const bend = (x1 + x2) / 2;
  return (
    <path
      className={dashed ? 'book-edge covers' : 'book-edge'}
      d={`M${String(x1)} ${String(y1)}C${String(bend)} ${String(y1)} ${String(bend)} ${String(y2)} ${String(x2)} ${String(y2)}`}
    />
  );
};

/** As many characters as stand in a box at the size they are drawn. */
const FITS = 30;
const shortened = (text: string): string => (text.length > FITS ? `${text.slice(0, FITS - 1)}…` : text);

type BoxProps = { readonly box: Box; readonly focus?: boolean; readonly choose: (id: string) => void };

const BoxView = ({ box, focus = false, choose }: BoxProps): ReactNode => {
  const { say } = useSpeech();
  const { operation, x, y, hidden } = box;
  const pressed = (event: KeyboardEvent): void => {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    event.preventDefault();
    choose(operation.id);
  };
  return (
    <g
      className={['book-box', focus ? 'focus' : '', hidden ? 'covers' : ''].join(' ')}
      transform={`translate(${String(x)} ${String(y)})`}
      role="button"
      tabIndex={0}
      aria-label={say(operation.name)}
      aria-current={focus ? 'true' : undefined}
      onClick={() => choose(operation.id)}
      onKeyDown={pressed}
    >
      <title>{say(operation.name)}</title>
      <rect width={WIDE} height={HIGH} />
      <text x={12} y={HIGH / 2 + 5}>
        {shortened(say(operation.name))}
      </text>
    </g>
  );
};
