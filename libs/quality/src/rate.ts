/** A rate stays a pair until it is drawn: how many of how many. */
export type Rate = { readonly of: number; readonly count: number };

/** The share; null where there is nothing to divide by. */
export const share = ({ count, of }: Rate): number | null => (of === 0 ? null : count / of);
