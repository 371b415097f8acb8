import type { Ranked } from './ranking';
import type { TraceCounts } from './trace-counts';

/** The cheapest fact that would tell the two leading causes apart. */
export type NextFact =
  /** Ask what was seen when this claim was opened up: the two have different sources. */
  | { readonly kind: 'ask-as-found'; readonly claim: string; readonly between: Between }
  /** Find out whether this home, whose record does not say, shares the first. */
  | { readonly kind: 'find-record'; readonly claim: string; readonly between: Between }
  /** Look at this claim again: it shares one of the two and not the other. */
  | { readonly kind: 'look-again'; readonly claim: string; readonly between: Between }
  /** The two have the very same homes and the same source: nothing on record can tell them apart. */
  | { readonly kind: 'nothing-on-record'; readonly between: Between };

type Between = readonly [string, string];

export const nextFactOf = (ranking: readonly Ranked[], { claimed }: TraceCounts): NextFact | null => {
  const [first, second] = ranking.slice(0, 2).flatMap(({ tied }) => tied.slice(0, 2));
  if (first === undefined || second === undefined) return null;

  const between = [first.key, second.key] as const;
  const nameOf = (place: number | undefined): string | undefined => claimed[place ?? -1]?.claims[0];
  if (first.suspect.source !== second.suspect.source) {
    const silent = [...first.suspect.belong, ...first.suspect.partly].find(
      (place) => claimed[place]?.asFound.length === 0,
    );
    const claim = nameOf(silent);
    if (claim !== undefined) return { kind: 'ask-as-found', claim, between };
  }
  const unsure = nameOf(first.suspect.partly[0]);
  if (unsure !== undefined) return { kind: 'find-record', claim: unsure, between };
  const apart = first.suspect.belong.find((place) => !second.suspect.belong.includes(place));
  const claim = nameOf(apart);
  return claim === undefined
    ? { kind: 'nothing-on-record', between }
    : { kind: 'look-again', claim, between };
};
