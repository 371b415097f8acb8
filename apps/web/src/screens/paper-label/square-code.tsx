import { drawingSVG, qrcode } from 'bwip-js/generic';
import { useMemo } from 'react';
import type { ReactNode } from 'react';

/** QR (ISO/IEC 18004), the margin round it included. */
const squares = (text: string): string =>
  qrcode({ bcid: 'qrcode', text, paddingwidth: 4, paddingheight: 4 }, drawingSVG());

/** The text as squares, for cameras. The text itself stands beside it, always. */
export const SquareCode = ({ of }: { readonly of: string }): ReactNode => {
  const address = useMemo(() => `data:image/svg+xml;utf8,${encodeURIComponent(squares(of))}`, [of]);
  return <img className="square-code" src={address} alt="" />;
};
