import type { ReactNode } from 'react';
import { inPieces } from '../scan/serials';

/** A serial in its pieces; copied and read by a screen reader it is still one word. */
export const Serial = ({ of }: { readonly of: string }): ReactNode => (
  <span className="serial" translate="no">
    {inPieces(of).map((piece, at) => (
      <span key={at} className={/^[-._:]$/.test(piece) ? undefined : 'serial-piece'}>
        {piece}
      </span>
    ))}
  </span>
);
