import type { ReactNode } from 'react';

type Props = { readonly name: string; readonly short?: boolean; readonly children: ReactNode };

/** A table wider than the screen scrolls by itself, by keyboard too. */
export const TableFrame = ({ name, short = false, children }: Props): ReactNode => (
  <div className={short ? 'table-frame short' : 'table-frame'} tabIndex={0} role="region" aria-label={name}>
    {children}
  </div>
);
