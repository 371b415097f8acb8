import type { ReactNode } from 'react';

/** State by shape first, as in a drawing: the word stands beside it, the colour comes last. */
export type MarkName =
  | 'proven'
  | 'due'
  | 'waiting'
  | 'covered'
  | 'open-at-places'
  | 'refused'
  | 'held'
  | 'red-tag'
  | 'note'
  | 'corrected';

const SHAPES: Readonly<Record<MarkName, ReactNode>> = {
  proven: <rect x="4" y="4" width="16" height="16" fill="currentColor" />,
  due: <rect x="5" y="5" width="14" height="14" fill="none" stroke="currentColor" strokeWidth="4" />,
  waiting: <rect x="4" y="4" width="16" height="16" fill="none" stroke="currentColor" strokeWidth="1.25" />,
  covered: (
    <>
      <rect
        x="2"
        y="2"
        width="20"
        height="20"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.5"
        strokeDasharray="4 2.67"
      />
      <rect x="7" y="7" width="10" height="10" fill="currentColor" />
    </>
  ),
  'open-at-places': (
    <>
      <rect x="5" y="5" width="14" height="14" fill="none" stroke="currentColor" strokeWidth="4" />
      <path d="M5 12h7v7H5z" fill="currentColor" />
    </>
  ),
  refused: (
    <>
      <rect x="4" y="4" width="16" height="16" fill="none" stroke="currentColor" strokeWidth="2.5" />
      <path d="M2 22L22 2" stroke="currentColor" strokeWidth="3" />
    </>
  ),
  held: (
    <>
      <rect x="4" y="4" width="16" height="16" fill="none" stroke="currentColor" strokeWidth="1.25" />
      <rect x="1" y="8.5" width="22" height="7" fill="currentColor" />
    </>
  ),
  'red-tag': (
    <>
      <path d="M8 3h8l3 4v14H5V7z" fill="none" stroke="currentColor" strokeWidth="2" />
      <circle cx="12" cy="8" r="1.75" fill="currentColor" />
    </>
  ),
  note: (
    <>
      <path d="M4 20l7-9h11" stroke="currentColor" strokeWidth="2" fill="none" />
      <circle cx="4" cy="20" r="3" fill="currentColor" />
    </>
  ),
  corrected: (
    <>
      <rect x="4" y="4" width="16" height="16" fill="none" stroke="currentColor" strokeWidth="1.25" />
      <path d="M1 12h22" stroke="currentColor" strokeWidth="2.5" />
    </>
  ),
};

export const Mark = ({ name, size = 24 }: { readonly name: MarkName; readonly size?: number }): ReactNode => (
  <svg
    className={`mark mark-${name}`}
    width={size}
    height={size}
    viewBox="0 0 24 24"
    aria-hidden="true"
    focusable="false"
  >
    {SHAPES[name]}
  </svg>
);
