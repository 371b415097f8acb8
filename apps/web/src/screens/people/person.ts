import type { AnswerOf } from '@libs/contracts';

export type Person = AnswerOf<'people'>['people'][number];
