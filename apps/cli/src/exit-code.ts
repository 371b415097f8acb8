/** What the command says to whoever started it. Documented in `studbook --help`. */
export const EXIT = {
  done: 0,
  /** Nothing, or not all, could be done; the reason is on stderr. */
  failed: 1,
  /** All was read, and some rows were refused; they lie in a file of their own. */
  someRefused: 2,
} as const;

/** Something the person at the keyboard can put right: told in words, without a stack. */
export class Usable extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'Usable';
  }
}
