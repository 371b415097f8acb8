import { randomInt } from 'node:crypto';

/** Six digits are typed with a glove in two seconds; five wrong guesses and the door waits. */
const DIGITS = 6;

export const newPin = (): string => String(randomInt(10 ** DIGITS)).padStart(DIGITS, '0');
