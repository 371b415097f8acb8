import { randomInt } from 'node:crypto';

/** No letter that is read as another, no vowel that makes a word. */
const LETTERS = '23456789BCDFGHJKLMNPQRSTVWXZ';
const GROUP = 4;

/** For people to read out and type in: `B7KD-93MX-TQ2W`. Each letter is 4.8 bits. */
export const readableCode = (length: number): string =>
  Array.from({ length }, (_, at) => (at > 0 && at % GROUP === 0 ? '-' : '') + letter()).join('');

const letter = (): string => LETTERS[randomInt(LETTERS.length)] ?? '';

/** As it is kept and compared, whatever blanks, hyphens and small letters it was typed with. */
export const plainCode = (typed: string): string => typed.toUpperCase().replace(/[\s-]/g, '');
