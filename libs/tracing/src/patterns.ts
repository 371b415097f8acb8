import { dayOf, isLike } from './units';
import type { ClaimRow, HomeRow, PatternName, PatternRow, TraceInput } from './trace-rows';

/** A pattern that most like claims show, and how many of those of which it is known. */
export type FoundPattern = {
  readonly pattern: PatternName;
  readonly places: readonly string[];
  readonly count: number;
  readonly of: number;
  readonly pointsTo: readonly string[];
  readonly speaksAgainst: readonly string[];
};

/** Fewer claims, or a smaller share of them, make no pattern (common practice, no published source). */
const FEWEST = 3;
const SHARE_THAT_SHOWS = 0.75;

const AT_ONCE_DAYS = 30;
const A_YEAR_DAYS = 365;
/** November to March. */
const COLD_MONTHS: readonly string[] = ['11', '12', '01', '02', '03'];

export const patternsOf = (input: TraceInput): readonly FoundPattern[] => {
  const homes = new Map(input.homes.map((home) => [home.home, home]));
  const like = input.claims.filter((claim) => isLike(claim, input));
  return input.patterns.flatMap((row) => {
    const shown = like.flatMap((claim) => shows(row, claim, homes.get(claim.home)) ?? []);
    const count = shown.filter(Boolean).length;
    const isShown = shown.length >= FEWEST && count >= SHARE_THAT_SHOWS * shown.length;
    return isShown ? [{ ...row, count, of: shown.length }] : [];
  });
};

/** Null where the claim does not say. */
const shows = (
  { pattern, places }: PatternRow,
  claim: ClaimRow,
  home: HomeRow | undefined,
): boolean | null => {
  if (pattern === 'place') return claim.place === null ? null : places.includes(claim.place);
  if (claim.noticedOn === null || home?.occupiedOn == null) return null;

  const days = dayOf(claim.noticedOn) - dayOf(home.occupiedOn);
  switch (pattern) {
    case 'at-once':
      return days <= AT_ONCE_DAYS;
    case 'after-a-year':
      return days >= A_YEAR_DAYS;
    default:
      return days < A_YEAR_DAYS && COLD_MONTHS.includes(claim.noticedOn.slice(5, 7));
  }
};
