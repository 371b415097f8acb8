import { code128, drawingSVG } from 'bwip-js/generic';
import { useMemo } from 'react';
import type { ReactNode } from 'react';

/** Code 128 (ISO/IEC 15417), tall enough to be scanned through a sleeve. */
const bars = (text: string): string =>
  code128({ bcid: 'code128', text, height: 14, includetext: false, paddingwidth: 10 }, drawingSVG());

/** A serial as bars. The text itself stands beside it, always. */
export const Barcode = ({ of }: { readonly of: string }): ReactNode => {
  const address = useMemo(() => `data:image/svg+xml;utf8,${encodeURIComponent(bars(of))}`, [of]);
  return <img className="barcode" src={address} alt="" />;
};
