import type { AnswerOf } from '@libs/contracts';

export type OpenDefect = AnswerOf<'openDefects'>['defects'][number];
