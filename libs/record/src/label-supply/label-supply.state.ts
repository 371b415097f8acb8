/** Labels received, as runs of numbers that follow one another. */
export type LabelSupply = { readonly runs: readonly LabelRun[] };
export type LabelRun = { readonly first: string; readonly last: string; readonly at: string };

export const noLabels: LabelSupply = { runs: [] };

const LETTERS = 3;
const FORM = /^[A-Z]{3}\d{6}$/;

export type LabelNumber = { readonly letters: string; readonly digits: number };

/** Three letters and six digits (24 CFR 3280.11(b)); undefined: no label number. */
export const labelNumber = (text: string): LabelNumber | undefined =>
  FORM.test(text) ? { letters: text.slice(0, LETTERS), digits: Number(text.slice(LETTERS)) } : undefined;

export const labelText = ({ letters, digits }: LabelNumber): string =>
  `${letters}${String(digits).padStart(6, '0')}`;

/** As it is printed: `ABC 000 001`. */
export const labelShown = (number: string): string =>
  FORM.test(number) ? `${number.slice(0, LETTERS)} ${number.slice(LETTERS, 6)} ${number.slice(6)}` : number;

/** Numbers of one series have one length, so that they compare as text. */
export const isIn = ({ first, last }: Pick<LabelRun, 'first' | 'last'>, number: string): boolean =>
  first.slice(0, LETTERS) === number.slice(0, LETTERS) && first <= number && number <= last;

export const isReceived = ({ runs }: LabelSupply, number: string): boolean =>
  runs.length === 0 || runs.some((run) => isIn(run, number));
