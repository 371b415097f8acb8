import type { AnswerOf } from '@libs/contracts';

/** Shown again with every change. */
export type Proving = { readonly secret: string; readonly code: string | undefined };
export type Part = {
  readonly own: AnswerOf<'ownAccess'>;
  readonly proving: Proving;
  readonly changed: () => void;
};
/** The contract's own least length of a PIN. */
const SHORTEST = 4;
export const isShown = ({ secret }: Proving): boolean => secret.length >= SHORTEST;
