import { BELIEFS, exposureOf, gatherCounts, rankingOf, sourceShares, weigh } from '@libs/tracing';
import type { Cause, Ranked, TraceInput } from '@libs/tracing';
import { asRows } from './as-rows';
import { baselines } from './baselines';
import { oracleRanking } from './oracle';
import { plantPlant } from './planted-plant';
import type { PlantedPlant } from './planted-plant';
import type { RankedKeys } from './ties';

export const RANKERS = ['studbook', 'oracle', 'station', 'lot'] as const;
export type Ranker = (typeof RANKERS)[number];

export type Trial = {
  readonly seed: number;
  readonly kind: string;
  readonly size: 'small' | 'large';
  readonly claims: number;
  readonly reports: number;
  /** Place of the true cause, from 1; 0 where it is not named, or there is none. */
  readonly place: { readonly [ranker in Ranker]: number };
  /** How many causes share the first place. */
  readonly tied: number;
  readonly confidence: number;
  readonly noCommonCause: number;
  /** Of the homes that truly share the cause, those found; of those found, the true ones. Null where there is no cause. */
  readonly exposure: { readonly true: number; readonly found: number; readonly both: number } | null;
  readonly ms: number;
};

/** A place that is known already need not be worked out again: the oracle is slow. */
export const runTrial = (seed: number, placeByOracle?: number): Trial => {
  const plant = plantPlant(seed);
  const input = asRows(plant);
  const began = process.cpuUsage();
  const found = studbook(input);
  const { user, system } = process.cpuUsage(began);
  const { station, lot } = baselines(input);
  const truth = truthOf(plant);
  const ranking = found.ranking.map(({ tied, probability }) => ({
    keys: tied.map(({ key }) => withoutDates(key)),
    probability,
  }));
  const [first] = ranking;
  return {
    seed,
    kind: plant.cause?.kind ?? 'none',
    size: plant.effect.size,
    claims: plant.claims.length,
    reports: plant.claims.filter(({ reported }) => reported !== null).length,
    place: {
      studbook: placeOf(ranking, truth),
      oracle: plant.cause === null ? 0 : (placeByOracle ?? placeOf(oracleRanking(plant), truth)),
      station: placeOf(station, stationOf(plant)),
      lot: placeOf(lot, truth),
    },
    tied: first?.keys.length ?? 0,
    confidence: first?.probability ?? 0,
    noCommonCause: found.noCommonCause,
    exposure: plant.cause === null ? null : exposureFound(plant, input, causeFound(found.ranking, truth)),
    ms: (user + system) / 1000,
  };
};

const studbook = (input: TraceInput): { ranking: readonly Ranked[]; noCommonCause: number } => {
  const counts = gatherCounts(input, BELIEFS.halfOfClaimsDays);
  const shares = sourceShares(input, BELIEFS);
  const posterior = weigh(counts, { operations: input.operations, shares, beliefs: BELIEFS });
  return { ranking: rankingOf(posterior), noCommonCause: posterior.noCommonCause };
};

const causeFound = (ranking: readonly Ranked[], truth: string): Cause | null => {
  const found = ranking.flatMap(({ tied }) => tied).find(({ key }) => withoutDates(key) === truth);
  return found?.cause ?? null;
};

/** The true cause chosen, as a person would who has confirmed it: which homes does the record say share it? */
const exposureFound = (
  { line, cause }: PlantedPlant,
  input: TraceInput,
  chosen: Cause | null,
): Trial['exposure'] => {
  const shares = new Set(
    line.sections.flatMap(({ home }, section) =>
      cause?.shares[section] === 1 ? [line.homes[home]?.id ?? ''] : [],
    ),
  );
  const found = chosen === null ? [] : exposureOf(chosen, input).map(({ home }) => home);
  const both = found.filter((home) => shares.has(home)).length;
  return { true: shares.size, found: found.length, both };
};

/** A stretch of time counts as found by its operation; how well its homes are found is measured apart. */
const withoutDates = (key: string): string => key.replace(/\/window\/.*$/, '/window');

const truthOf = ({ cause }: PlantedPlant): string =>
  cause === null
    ? ''
    : [cause.source, cause.factor, ...(cause.value === null ? [] : [cause.value])].join('/');

const stationOf = ({ cause, line }: PlantedPlant): string =>
  line.shape.operations[cause?.operation ?? -1]?.station ?? '';

const placeOf = (ranking: readonly RankedKeys[], truth: string): number =>
  ranking.findIndex(({ keys }) => keys.includes(truth)) + 1;
