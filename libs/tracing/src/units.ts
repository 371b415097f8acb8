import { daysBetween } from '@libs/kernel';
import type { ClaimRow, HomeRow, TraceInput } from './trace-rows';

/** What is claimed or not: a home, or a section of it where every like claim names one. */
export type Unit = {
  readonly id: string;
  readonly home: HomeRow;
  readonly role: string | null;
  /** Days since 1970 of entering the line; null where nobody knows. */
  readonly builtDay: number | null;
  readonly claims: readonly ClaimRow[];
  /** How much of its chances to be complained of it has had, 0 to 1; null while nobody lives in it. */
  readonly seasoned: number | null;
};

export const dayOf = (text: string): number => daysBetween('1970-01-01', text.slice(0, 10));

export const isLike = (claim: ClaimRow, of: Pick<TraceInput, 'component' | 'symptom'>): boolean =>
  claim.component === of.component && claim.symptom === of.symptom;

/** From the line to living in it, where the day is not known (common practice, no published source). */
const USUAL_DAYS_TO_OCCUPANCY = 90;

/** All units in the order they were built; like days by name, so that the order of rows changes nothing. */
export const unitsOf = (input: TraceInput, halfOfClaimsDays: number): readonly Unit[] => {
  const like = likeClaimsByHome(input);
  const bySection = namesEverySection(input, like);
  const today = dayOf(input.asOf);
  const units = input.homes.flatMap((home): readonly Unit[] => {
    const claims = like.get(home.home) ?? [];
    const builtDay = home.builtOn === null ? null : dayOf(home.builtOn);
    const seasonedDays = daysLivedIn(home, builtDay, today);
    const season = (own: readonly ClaimRow[]): number | null =>
      seasonedDays === null
        ? own.length > 0
          ? 0.5
          : null
        : Math.max(0.02, 1 - 2 ** (-seasonedDays / halfOfClaimsDays));
    if (!bySection) {
      return [{ id: home.home, home, role: null, builtDay, claims, seasoned: season(claims) }];
    }
    return home.sections.map(({ serial, role }) => {
      const own = claims.filter((claim) => claim.section === serial);
      return { id: serial, home, role, builtDay, claims: own, seasoned: season(own) };
    });
  });
  return [...units].sort(inOrder);
};

/** Every section as a unit, complained of or not: for finding all that share a cause. */
export const everySection = (homes: readonly HomeRow[]): readonly Unit[] =>
  homes
    .flatMap((home): readonly Unit[] => {
      const builtDay = home.builtOn === null ? null : dayOf(home.builtOn);
      const of = { home, builtDay, claims: [], seasoned: null };
      return home.sections.length === 0
        ? [{ ...of, id: home.home, role: null }]
        : home.sections.map(({ serial, role }) => ({ ...of, id: serial, role }));
    })
    .sort(inOrder);

const inOrder = (one: Unit, other: Unit): number =>
  orderOf(one) - orderOf(other) || (one.id < other.id ? -1 : 1);

const orderOf = ({ builtDay }: Unit): number => builtDay ?? Number.MAX_SAFE_INTEGER;

const daysLivedIn = (home: HomeRow, builtDay: number | null, today: number): number | null => {
  if (home.where !== 'sold') return null;
  const from =
    home.occupiedOn === null ? (builtDay ?? today - 365) + USUAL_DAYS_TO_OCCUPANCY : dayOf(home.occupiedOn);
  return from > today ? null : today - from;
};

const likeClaimsByHome = (input: TraceInput): ReadonlyMap<string, readonly ClaimRow[]> => {
  const byHome = new Map<string, ClaimRow[]>();
  for (const claim of input.claims) {
    if (!isLike(claim, input)) continue;
    const soFar = byHome.get(claim.home);
    if (soFar === undefined) byHome.set(claim.home, [claim]);
    else soFar.push(claim);
  }
  return byHome;
};

/** Sections are compared only when every like claim says which one: a guess would favour what it guessed. */
const namesEverySection = (input: TraceInput, like: ReadonlyMap<string, readonly ClaimRow[]>): boolean => {
  let named = 0;
  for (const home of input.homes) {
    for (const claim of like.get(home.home) ?? []) {
      if (!home.sections.some(({ serial }) => serial === claim.section)) return false;
      named++;
    }
  }
  return named > 0;
};
