import { isDecimal, rationalOf } from './decimal';
import { lowest } from './measure-unit';

/** `36-1/2`, `36 1/2`, `1/2`, with or without the inch mark: as people read a tape. */
const TAPE = /^(-)?(?:(\d{1,6})(?:\s*-\s*|\s+))?(\d{1,4})\/(\d{1,4})$/;
/** Tapes are marked in halves down to sixty-fourths; these are also the ones that end as decimals. */
const DENOMINATORS: ReadonlySet<string> = new Set(['2', '4', '8', '16', '32', '64']);
const FINEST = 64n;

/** Inches as people write them, to decimal text: exact. Undefined when it is neither a decimal nor a tape fraction. */
export const inchesAsDecimal = (typed: string): string | undefined => {
  const text = typed.trim().replace(/\s*(?:"|″|in\.?)$/, '');
  if (isDecimal(text)) return text;

  const [, minus = '', whole = '0', top = '', bottom = ''] = TAPE.exec(text) ?? [];
  if (!DENOMINATORS.has(bottom) || Number(top) >= Number(bottom)) return undefined;

  return minus + sixtyFourthsAsDecimal(BigInt(whole) * FINEST + (BigInt(top) * FINEST) / BigInt(bottom));
};

/** 1/64 is 0.015625: six places always suffice. */
const sixtyFourthsAsDecimal = (sixtyFourths: bigint): string => {
  const millionths = (sixtyFourths * 1_000_000n) / FINEST;
  const places = String(millionths % 1_000_000n)
    .padStart(6, '0')
    .replace(/0+$/, '');
  return places === '' ? String(millionths / 1_000_000n) : `${millionths / 1_000_000n}.${places}`;
};

/** Decimal inches as a tape shows them (`36 1/2`); as they are, when no mark on a tape says it exactly. */
export const inchesAsFraction = (decimal: string): string => {
  if (!isDecimal(decimal)) return decimal;
  const { num, den } = lowest(rationalOf(decimal));
  if (!DENOMINATORS.has(String(den))) return decimal;

  const size = num < 0n ? -num : num;
  const whole = size / den === 0n ? '' : `${size / den} `;
  return `${num < 0n ? '-' : ''}${whole}${size % den}/${den}`;
};
