import { benjaminiHochberg, fisherExact } from '@libs/quality';
import type { TwoByTwo } from '@libs/quality';
import { BELIEFS } from './beliefs';
import type { Beliefs } from './beliefs';
import type { Cause } from './cause';
import { evidenceOf } from './evidence';
import type { Evidence } from './evidence';
import { gatherCounts } from './gather';
import { nextFactOf } from './next-fact';
import type { NextFact } from './next-fact';
import { patternsOf } from './patterns';
import type { FoundPattern } from './patterns';
import { weigh } from './posterior';
import type { Posterior } from './posterior';
import { rankingOf } from './ranking';
import type { Ranked } from './ranking';
import { namedSources, sourceShares } from './sources';
import type { SourceQuestion } from './sources';
import type { TraceCounts } from './trace-counts';
import type { TraceInput } from './trace-rows';
import { isLike } from './units';

/** How sure: codes, for the reader's own language. */
export const CONFIDENCE_WORDS = ['almost-sure', 'likely', 'possible', 'unlikely'] as const;
export type ConfidenceWord = (typeof CONFIDENCE_WORDS)[number];

const WORD_FROM: readonly (readonly [ConfidenceWord, number])[] = [
  ['almost-sure', 0.9],
  ['likely', 0.6],
  ['possible', 0.2],
];

export const confidenceWord = (confidence: number): ConfidenceWord =>
  WORD_FROM.find(([, from]) => confidence >= from)?.[0] ?? 'unlikely';

export type Candidate = {
  /** Causes that nothing on record tells apart share a rank. */
  readonly rank: number;
  readonly key: string;
  readonly cause: Cause;
  /** That it is this cause, or one of those it is tied with. */
  readonly confidence: number;
  readonly word: ConfidenceWord;
  readonly tiedWith: readonly string[];
  readonly evidence: readonly Evidence[];
};

export type Trace = {
  readonly component: string;
  readonly symptom: string;
  readonly asOf: string;
  /** Like claims; those of homes that are not among the rows are left out, and named. */
  readonly claims: number;
  readonly unplaced: readonly string[];
  /** Homes (or sections) in use, and those of them with a like claim. */
  readonly units: { readonly claimed: number; readonly of: number };
  /** That the claims have no cause in common. */
  readonly noCommonCause: number;
  /** Whether a common cause is said: the first is likelier than not. */
  readonly verdict: 'common-cause' | 'undecided' | 'no-common-cause';
  readonly candidates: readonly Candidate[];
  /** Sets of homes that were compared. */
  readonly looked: number;
  readonly patterns: readonly FoundPattern[];
  readonly next: NextFact | null;
};

/** From rows. */
export const trace = (input: TraceInput, beliefs: Beliefs = BELIEFS): Trace => {
  const known = new Set(input.homes.map(({ home }) => home));
  const like = input.claims.filter((claim) => isLike(claim, input));
  return traceCounts(
    gatherCounts(input, beliefs.halfOfClaimsDays),
    {
      ...input,
      claims: like.length,
      unplaced: like.filter(({ home }) => !known.has(home)).map(({ claim }) => claim),
      found: patternsOf(input),
    },
    beliefs,
  );
};

export type CountedQuestion = SourceQuestion & {
  readonly asOf: string;
  readonly claims: number;
  readonly unplaced: readonly string[];
  readonly found: readonly FoundPattern[];
};

/** More are no help to a person. */
const CANDIDATES_MOST = 20;
const LIKELIER_THAN_NOT = 0.5;

/** From counts, as a view keeps them for tens of thousands of homes. */
export const traceCounts = (
  counts: TraceCounts,
  question: CountedQuestion,
  beliefs: Beliefs = BELIEFS,
): Trace => {
  const shares = sourceShares(question, beliefs, question.found);
  const posterior = weigh(counts, { operations: question.operations, shares, beliefs });
  const ranking = rankingOf(posterior);
  const adjusted = adjustedPs(counts);
  const context = { counts, shares, named: namedSources(question), patterns: question.found, adjusted };
  const candidates = ranking.slice(0, CANDIDATES_MOST).flatMap(({ rank, tied, probability }) =>
    tied.map((one) => ({
      rank,
      key: one.key,
      cause: one.cause,
      confidence: probability,
      word: confidenceWord(probability),
      tiedWith: tied.filter(({ key }) => key !== one.key).map(({ key }) => key),
      evidence: evidenceOf(one, context),
    })),
  );
  return {
    component: question.component,
    symptom: question.symptom,
    asOf: question.asOf,
    claims: question.claims,
    unplaced: question.unplaced,
    units: { claimed: counts.claimed.length, of: counts.strata.reduce((sum, { units }) => sum + units, 0) },
    noCommonCause: posterior.noCommonCause,
    verdict: verdictOf(posterior, ranking),
    candidates: candidates.slice(0, CANDIDATES_MOST),
    looked: adjusted.size,
    patterns: question.found,
    next: nextFactOf(ranking, counts),
  };
};

const verdictOf = ({ noCommonCause }: Posterior, [first]: readonly Ranked[]): Trace['verdict'] => {
  if ((first?.probability ?? 0) >= LIKELIER_THAN_NOT) return 'common-cause';
  return noCommonCause >= LIKELIER_THAN_NOT ? 'no-common-cause' : 'undecided';
};

/** Every set of homes looked at is one test, whatever number of causes it stands for. */
const adjustedPs = (counts: TraceCounts): ReadonlyMap<string, number> => {
  const sets = [...new Map(counts.groups.map((group) => [group.sameHomes, group])).values()];
  const units = counts.strata.reduce((sum, stratum) => sum + stratum.units, 0);
  const adjusted = benjaminiHochberg(
    sets.map((group): number => {
      const belong = group.cells.reduce((sum, cell) => sum + cell.units, 0);
      const partly = group.cells.reduce((sum, cell) => sum + cell.partly, 0);
      const others = counts.claimed.length - group.claimed.length - group.partly.length;
      const table: TwoByTwo = [
        [group.claimed.length, belong - group.claimed.length],
        [others, units - belong - partly - others],
      ];
      return fisherExact(table);
    }),
  );
  return new Map(sets.map(({ sameHomes }, at) => [sameHomes, adjusted[at] ?? 1]));
};
