import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Reference cases of tests/reference/cases: each names its source, gives the published figures as printed and the same
 * recomputed with an independent tool to 13 digits. See tests/reference/cases/README.md.
 */
export type ReferenceCase = {
  readonly id: string;
  readonly title: string;
  readonly source: { readonly title: string; readonly section?: string };
  // The shape of what goes in and comes out differs from case to case.
  readonly input: never;
  readonly published: never;
  readonly computed: { readonly tool: string; readonly command: string; readonly values: never };
};

export const referenceCase = (file: string, id: string): ReferenceCase => {
  const text = readFileSync(join(__dirname, '../reference/cases', `${file}.json`), 'utf8');
  const found = (JSON.parse(text).cases as ReferenceCase[]).find((each) => each.id === id);
  if (found === undefined) throw new Error(`No case ${id} in ${file}.json`);
  return found;
};

/** Relative 1e-9: the cases hold 13 digits. */
export const expectExact = (actual: number | null, expected: number): void => {
  if (actual === null) throw new Error(`Nothing computed where ${expected} is expected`);
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(expected), 1e-3));
};

/** Within half a unit of the last place as printed. */
export const expectAsPrinted = (actual: number | null, printed: number, places: number): void => {
  if (actual === null) throw new Error(`Nothing computed where ${printed} is printed`);
  expect(Math.abs(actual - printed)).toBeLessThanOrEqual(0.5 * 10 ** -places + 1e-12);
};
