import type { Beliefs } from './beliefs';
import type { Due, Suspect } from './due';
import { logSum } from './log-space';
import type { SourceShares } from './sources';
import type { ClaimedUnit } from './trace-counts';

/** A report that speaks against the true source is this much rarer. */
const AGAINST_TRUE = 0.15;
/** What no map names is met all the same. */
const LEAST_SHARE = 0.002;
/** A report that names several sources is right by chance at most so often. */
const CHANCE_MOST = 0.98;
/** How often a source is named by chance, from hardly ever to nearly always: even steps of the log odds. */
const CHANCES = Array.from({ length: 14 }, (_, step) => 1 / (1 + Math.exp(6.5 - (step * 10) / 13)));

/** The reports of some units, sorted by what they say of the suspect. */
type Heard = {
  /** For each report that names it: how many times likelier its names are to be met by chance than the suspect alone. */
  readonly hits: readonly number[];
  readonly misses: number;
  readonly against: number;
};

type Report = { readonly pointsTo: ReadonlySet<string>; readonly speaksAgainst: ReadonlySet<string> };

/**
 * What as-found reports say of a source. How often it is named where it is not the cause is not known: the fault map
 * guesses, and all reports at hand say what of that guess may be true. Each such chance is weighed by how likely it is.
 */
export class Reports {
  private readonly byUnit: readonly (readonly Report[])[];

  constructor(
    claimed: readonly ClaimedUnit[],
    private readonly shares: SourceShares,
    private readonly beliefs: Pick<Beliefs, 'reliability' | 'reportsTheMapIsWorth'>,
  ) {
    this.byUnit = claimed.map(({ asFound }) =>
      asFound.map(({ pointsTo, speaksAgainst }) => ({
        pointsTo: new Set(pointsTo),
        speaksAgainst: new Set(speaksAgainst),
      })),
    );
  }

  /** Log likelihood ratio of all that was reported, by the chance that a claim is due to the suspect. */
  of({ source, belong, partly }: Suspect): (due: Due) => number {
    const own = [this.heard(source, belong), this.heard(source, partly)] as const;
    if (own.every(isSilent)) return () => 0;

    const weights = this.weightsOfChances(source);
    return (due) =>
      logSum(
        this.beliefs.reliability.flatMap(({ value, share }) =>
          CHANCES.map(
            (chance, at) =>
              Math.log(share) +
              (weights[at] ?? 0) +
              saidOf(own[0], due.belong, { reliable: value, chance }) +
              saidOf(own[1], due.partly, { reliable: value, chance }),
          ),
        ),
      );
  }

  private heard(source: string, units: readonly number[]): Heard {
    const hits: number[] = [];
    let misses = 0;
    let against = 0;
    for (const unit of units) {
      for (const { pointsTo, speaksAgainst } of this.byUnit[unit] ?? []) {
        if (speaksAgainst.has(source)) against++;
        if (pointsTo.has(source)) hits.push(this.timesLikelier(pointsTo, source));
        else if (pointsTo.size > 0) misses++;
      }
    }
    return { hits, misses, against };
  }

  private timesLikelier(named: ReadonlySet<string>, source: string): number {
    return [...named].reduce((sum, one) => sum + this.shareOf(one), 0) / this.shareOf(source);
  }

  private shareOf(source: string): number {
    return Math.max(this.shares.get(source) ?? 0, LEAST_SHARE);
  }

  /** Log weights of the chances: the map's guess as a beta distribution, and how often all reports named the source. */
  private weightsOfChances(source: string): readonly number[] {
    const { hits, misses } = this.heard(source, [...this.byUnit.keys()]);
    const worth = this.beliefs.reportsTheMapIsWorth;
    const share = this.shareOf(source);
    const logs = CHANCES.map((chance) => {
      const guessed = worth * (share * Math.log(chance) + (1 - share) * Math.log(1 - chance));
      return guessed + hits.length * Math.log(chance) + misses * Math.log(1 - chance);
    });
    const total = logSum(logs);
    return logs.map((log) => log - total);
  }
}

const isSilent = ({ hits, misses, against }: Heard): boolean =>
  hits.length === 0 && misses === 0 && against === 0;

const saidOf = (
  { hits, misses, against }: Heard,
  due: number,
  { reliable, chance }: { readonly reliable: number; readonly chance: number },
): number => {
  let sum = misses * Math.log(due * (1 - reliable) + 1 - due);
  for (const times of hits) {
    const usual = Math.min(CHANCE_MOST, chance * times);
    sum += Math.log((due * (reliable + (1 - reliable) * usual)) / usual + 1 - due);
  }
  return sum + against * Math.log(due * AGAINST_TRUE + 1 - due);
};
