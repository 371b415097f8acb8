import type { RulebookProblem } from './rulebook';

/** Where complaints go while a rulebook is read, so that all of them come at once. */
export type Complain = (problem: RulebookProblem) => void;

/** A complaint about one row, its file and number known. */
export type ComplainHere = (column: string | null, says: string) => void;

export const here =
  (complain: Complain, file: string, row: number): ComplainHere =>
  (column, says) =>
    complain({ file, row, column, says });
