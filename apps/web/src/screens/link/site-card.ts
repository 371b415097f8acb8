import type { AnswerOf } from '@libs/contracts';

export type SiteCard = AnswerOf<'linkSite'>['operations'][number];
export type StepProps = {
  readonly card: SiteCard;
  /** Who signs; empty until it was written. */
  readonly name: string;
  readonly token: string;
  readonly texts: AnswerOf<'linkSite'>['texts'];
  readonly again: () => void;
};
