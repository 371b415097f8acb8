import type { AnswerOf } from '@libs/contracts';

export type Book = AnswerOf<'rulebook'>;
export type BookOperation = Book['operations'][number];
