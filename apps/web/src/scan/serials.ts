import { checkCharacter } from '@libs/kernel';

/** Serials as people type them: any case, stray spaces, and letters taken for the digits they look like. */

export const tidied = (typed: string): string => typed.replace(/\s+/g, '').toUpperCase();

const LOOKALIKES: Readonly<Record<string, string>> = {
  O: '0',
  Q: '0',
  D: '0',
  I: '1',
  L: '1',
  S: '5',
  Z: '2',
  B: '8',
};

/** What is left when look-alikes and joiners no longer count: two serials with one skeleton are easily mixed up. */
export const skeleton = (serial: string): string =>
  tidied(serial)
    .replace(/[-._:]/g, '')
    .replace(/[A-Z]/g, (letter) => LOOKALIKES[letter] ?? letter);

const swapped = (one: string, other: string, at: number): boolean =>
  one[at] === other[at + 1] && one[at + 1] === other[at];

/** Two serials that differ by one character, or hold two neighbours the wrong way round. */
const nearlyThe = (one: string, other: string): boolean => {
  if (one.length !== other.length) return one.length > 4 && (other.endsWith(one) || one.endsWith(other));
  const differing = one.split('').flatMap((character, at) => (character === other[at] ? [] : [at]));
  const [first = 0, second] = differing;
  return (
    differing.length <= 1 || (differing.length === 2 && second === first + 1 && swapped(one, other, first))
  );
};

/** Known serials that may have been meant, those with the very same skeleton first. */
export const meantBy = (typed: string, known: readonly string[]): readonly string[] => {
  const wanted = skeleton(typed);
  const same = known.filter((serial) => skeleton(serial) === wanted);
  const near = known.filter((serial) => !same.includes(serial) && nearlyThe(wanted, skeleton(serial)));
  return [...same, ...near].slice(0, 6);
};

const unjoined = (serial: string): string => tidied(serial).replace(/[-._:]/g, '');

const only = (found: readonly string[]): string | undefined => (found.length === 1 ? found[0] : undefined);

/**
 * The one known serial that was typed or scanned without its joiners, as printed labels often carry none; or with the
 * check character printed behind it, which also settles an O for a 0.
 */
export const surelyMeantBy = (typed: string, known: readonly string[]): string | undefined => {
  const same = known.filter((serial) => unjoined(serial) === unjoined(typed));
  const checked = skeleton(typed);
  return (
    only(same) ??
    only(known.filter((serial) => skeleton(serial + (checkCharacter(serial) ?? '')) === checked))
  );
};

const JOINER = /(?<=[-._:])|(?=[-._:])/;
const LETTER_OR_DIGIT = /(?<=\d)(?=[A-Z])|(?<=[A-Z])(?=\d)/;
/** As many characters as are read aloud in one breath. */
const BREATH = 5;

const inBreaths = (piece: string): readonly string[] =>
  piece.length <= BREATH
    ? [piece]
    : piece.split(LETTER_OR_DIGIT).flatMap((run) => run.match(/.{1,4}(?=(?:.{4})*$)|.{1,3}/g) ?? [run]);

/** A serial in pieces that can be read aloud: at its own joiners, long runs in threes and fours. */
export const inPieces = (serial: string): readonly string[] => serial.split(JOINER).flatMap(inBreaths);
