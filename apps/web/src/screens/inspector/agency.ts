import type { AnswerOf } from '@libs/contracts';

export type Agency = AnswerOf<'agency'>;
export type Part = { readonly agency: Agency; readonly again: () => void; readonly isTheirs: boolean };
