import type { AnswerOf } from '@libs/contracts';

export type File = AnswerOf<'determination'>;
export type StepProps = { readonly file: File; readonly done: () => void };

/** Of 3282.404(c); the list there is not exclusive. */
export const METHODS = ['i', 'ii', 'iii', 'iv', 'v', 'vi', 'vii', 'other'] as const;
export type Method = (typeof METHODS)[number];
export const METHOD_WORDS = {
  i: 'due.method-i',
  ii: 'due.method-ii',
  iii: 'due.method-iii',
  iv: 'due.method-iv',
  v: 'due.method-v',
  vi: 'due.method-vi',
  vii: 'due.method-vii',
  other: 'due.method-other',
} as const;
