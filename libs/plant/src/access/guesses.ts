import type { AccessRows, GuessesRow } from './access-rows';

/** Five slips are human; after that each further one doubles the wait. */
const FREE_GUESSES = 5;
const FIRST_WAIT_MS = 60_000;
/** A lead locked out for longer than a quarter of an hour would sign with someone else's PIN. */
const LONGEST_WAIT_MS = 900_000;

const waitMs = (failures: number): number =>
  failures < FREE_GUESSES ? 0 : Math.min(LONGEST_WAIT_MS, FIRST_WAIT_MS * 2 ** (failures - FREE_GUESSES));

/** Counted before the guess is looked at, so that a crash or a second sender cannot get guesses for nothing. */
export const countGuess = (
  rows: AccessRows,
  person: string,
  before: GuessesRow | undefined,
  now: number,
): Promise<void> => {
  const failures = (before?.failures ?? 0) + 1;
  const wait = waitMs(failures);
  return rows.countGuess(person, failures, wait === 0 ? 0 : now + wait);
};

export const forgetGuesses = (rows: AccessRows, person: string): Promise<void> =>
  rows.countGuess(person, 0, 0);
