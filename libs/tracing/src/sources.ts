import type { Beliefs } from './beliefs';
import type { FoundPattern } from './patterns';
import type { FaultRow, OperationRow } from './trace-rows';

/** How likely each operation and each outside cause is held to be the source of such a claim, before looking. Adds up to 1. */
export type SourceShares = ReadonlyMap<string, number>;

export type SourceQuestion = {
  readonly component: string;
  readonly symptom: string;
  readonly faults: readonly FaultRow[];
  readonly operations: readonly OperationRow[];
};

/** A third to half of real claims come from outside the line (common practice, no published source). */
const OUTSIDE_SHARE = 0.4;

/** What the fault map names for this symptom of this component. */
export const namedSources = (question: SourceQuestion): ReadonlySet<string> => {
  const row = faultOf(question);
  return new Set([
    ...(row?.causes ?? []).map(({ operation }) => operation),
    ...(row?.elsewhere ?? []).map(({ cause }) => cause),
  ]);
};

const faultOf = ({ faults, component, symptom }: SourceQuestion): FaultRow | undefined =>
  faults.find((fault) => fault.component === component && fault.symptom === symptom);

/** By the fault map, moved by the patterns the claims show. */
export const sourceShares = (
  question: SourceQuestion,
  beliefs: Beliefs,
  patterns: readonly FoundPattern[] = [],
): SourceShares => {
  const shares = sharesByMap(question, beliefs);
  if (patterns.length === 0) return shares;
  return normalised(
    [...shares].map(
      ([source, share]) => [source, share * oddsByPatterns(source, patterns, beliefs)] as const,
    ),
  );
};

/** Patterns overlap, so that several together weigh no more than two. */
const PATTERNS_MOST = 2;

const oddsByPatterns = (
  source: string,
  patterns: readonly FoundPattern[],
  { patternOdds }: Beliefs,
): number => {
  const balance = patterns.reduce(
    (sum, { pointsTo, speaksAgainst }) =>
      sum + (pointsTo.includes(source) ? 1 : 0) - (speaksAgainst.includes(source) ? 1 : 0),
    0,
  );
  return patternOdds ** Math.max(-PATTERNS_MOST, Math.min(PATTERNS_MOST, balance));
};

const sharesByMap = (question: SourceQuestion, beliefs: Beliefs): SourceShares => {
  const row = faultOf(question);
  const operations = question.operations.map(({ operation }) => operation);
  const outside = Object.keys(beliefs.outside);
  const named = row === undefined ? new Map<string, number>() : weightsOf(row, beliefs);
  const spread = (sources: readonly string[], share: number): readonly (readonly [string, number])[] => {
    const unnamed = sources.filter((source) => !named.has(source));
    return unnamed.map((source) => [source, share / unnamed.length] as const);
  };
  if (named.size === 0) {
    return new Map([...spread(operations, 1 - OUTSIDE_SHARE), ...spread(outside, OUTSIDE_SHARE)]);
  }
  return normalised([
    ...[...named].map(
      ([source, share]) =>
        [source, share * (1 - beliefs.unnamedOperations - beliefs.unnamedOutside)] as const,
    ),
    ...spread(operations, beliefs.unnamedOperations),
    ...spread(outside, beliefs.unnamedOutside),
  ]);
};

const weightsOf = (row: FaultRow, { weights }: Beliefs): ReadonlyMap<string, number> =>
  normalised([
    ...row.causes.map(({ operation, weight }) => [operation, weights[weight]] as const),
    ...row.elsewhere.map(({ cause, weight }) => [cause, weights[weight]] as const),
  ]);

const normalised = (entries: readonly (readonly [string, number])[]): ReadonlyMap<string, number> => {
  const total = entries.reduce((sum, [, share]) => sum + share, 0);
  return new Map(entries.map(([source, share]) => [source, share / total]));
};
