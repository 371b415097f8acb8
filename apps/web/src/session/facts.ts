import type { AnswerOf } from '@libs/contracts';

/** Who is signed in, and the plant they are signed in to. */
export type Me = AnswerOf<'me'>;
export type PlantFacts = AnswerOf<'plant'>;
