import { PARTLY_SHARE, associationOf } from './association';
import type { Association } from './association';
import type { Beliefs } from './beliefs';
import { causeKey, sourceOf } from './cause';
import type { Cause, Factor } from './cause';
import { calendarDay } from './calendar';
import type { Due, Suspect } from './due';
import { logSum } from './log-space';
import { ROW_FACTORS } from './row-factors';
import { signsOf } from './signs';
import type { Signs } from './signs';
import type { SourceShares } from './sources';
import { suspectsOf } from './suspects';
import type { Suspected } from './suspects';
import type { GroupCell, Slice, TraceCounts } from './trace-counts';
import type { OperationRow } from './trace-rows';
import { windowOf } from './windows';
import type { Window } from './windows';

/** A cause weighed: what the counts say, what the signs say, and how likely it is once all is weighed together. */
export type Weighed = {
  readonly cause: Cause;
  readonly key: string;
  /** Equal where the homes are the very same. */
  readonly sameHomes: string;
  readonly suspect: Suspect;
  readonly suspected: Suspected;
  /** The units that share it, by stratum; null where all do. */
  readonly cells: readonly GroupCell[] | null;
  /** For an instrument: whether it was found out of tolerance. */
  readonly outOfTolerance: boolean | null;
  /** Logs of the likelihood ratios against no common cause: counts and signs together, and signs alone. */
  readonly logRatio: number;
  readonly logSigns: number;
  readonly probability: number;
};

export type Posterior = {
  readonly weighed: readonly Weighed[];
  readonly noCommonCause: number;
  readonly window: Window | null;
};

export type Weighing = {
  readonly operations: readonly OperationRow[];
  readonly shares: SourceShares;
  readonly beliefs: Beliefs;
};

/** So many sets of homes, the likeliest at a quick look, are judged with everything refitted. */
const JUDGED_FULLY = 60;

export const weigh = (counts: TraceCounts, weighing: Weighing): Posterior => {
  const { beliefs } = weighing;
  const stratumOf = counts.claimed.map(({ stratum }) => stratum);
  const association = associationOf(counts.strata, stratumOf, beliefs);
  const signs = signsOf(counts.claimed, counts.habits, weighing);
  const window = windowOf(association, counts.slices, counts.claimed);
  const suspects = suspectsOf(counts, weighing.operations, weighing).filter(
    ({ homes }) => homes.kind !== 'window' || window !== null,
  );
  const ratios = new Ratios(association, window, beliefs);
  const trials = suspects.map((suspected) => trialOf(suspected, { counts, window, signs, beliefs }));
  ratios.judgeFully(bestSets(trials, ratios));
  return normalised(trials, ratios, window, beliefs);
};

type Trial = {
  readonly suspected: Suspected;
  readonly cause: Cause;
  readonly sameHomes: string;
  readonly suspect: Suspect;
  readonly signs: readonly number[];
};

const trialOf = (
  suspected: Suspected,
  context: { counts: TraceCounts; window: Window | null; signs: Signs; beliefs: Beliefs },
): Trial => {
  const { homes } = suspected;
  const cause = homes.kind === 'window' ? windowCause(suspected.cause, context) : suspected.cause;
  const suspect = {
    source: sourceOf(cause),
    ...claimedOf(suspected, context),
    recordsKnown: isOfRecords(cause.factor),
  };
  const due = homes.kind === 'every' ? dueToEvery(context.beliefs) : dueToGroup(context.beliefs);
  const sameHomes = homes.kind === 'group' ? homes.group.sameHomes : homes.kind;
  return { suspected, cause, sameHomes, suspect, signs: context.signs.of(suspect, due) };
};

/** Where a group is made of records, units without one were sorted by that already. */
const isOfRecords = (factor: Factor): boolean =>
  factor === 'unrecorded' || ROW_FACTORS.some((one) => one === factor);

const claimedOf = (
  { homes }: Suspected,
  { counts, window }: { counts: TraceCounts; window: Window | null },
): Pick<Suspect, 'belong' | 'partly'> => {
  if (homes.kind === 'group') return { belong: homes.group.claimed, partly: homes.group.partly };
  if (homes.kind === 'window') return { belong: window?.split.claimed ?? [], partly: [] };
  return { belong: counts.claimed.map((_, place) => place), partly: [] };
};

const windowCause = (
  cause: Cause,
  { counts, window }: { counts: TraceCounts; window: Window | null },
): Cause =>
  window === null
    ? cause
    : {
        ...cause,
        value: stretchOf(counts.slices, window),
        widest: stretchOf(counts.slices, window.widest),
      };

export const stretchOf = (
  slices: readonly Slice[],
  { from, to }: { readonly from: number; readonly to: number },
): string => `${calendarDay(slices[from]?.fromDay ?? 0)}..${calendarDay(slices[to]?.toDay ?? 0)}`;

const dueToGroup = ({ effects }: Beliefs): readonly Due[] =>
  effects.map(({ value }) => {
    const added = PARTLY_SHARE * (value - 1);
    return { belong: (value - 1) / value, partly: added / (1 + added) };
  });

const dueToEvery = ({ shareDue }: Beliefs): readonly Due[] =>
  shareDue.map(({ value }) => ({ belong: value, partly: 0 }));

/** Log likelihood ratios of sets of homes, quick until judged fully. */
class Ratios {
  private readonly bySet = new Map<string, readonly number[]>();

  constructor(
    private readonly association: Association,
    private readonly window: Window | null,
    private readonly beliefs: Beliefs,
  ) {}

  of({ sameHomes, suspected: { homes } }: Trial): readonly number[] {
    if (homes.kind === 'every') return this.beliefs.shareDue.map(() => 0);
    if (homes.kind === 'window') return this.window?.logRatios ?? [];
    const known = this.bySet.get(sameHomes);
    if (known !== undefined) return known;
    const quick = this.association.quick(homes.group);
    this.bySet.set(sameHomes, quick);
    return quick;
  }

  judgeFully(trials: readonly Trial[]): void {
    for (const { sameHomes, suspected } of trials) {
      if (suspected.homes.kind === 'group') {
        this.bySet.set(sameHomes, this.association.full(suspected.homes.group));
      }
    }
  }

  /** Counts and signs together, over all effects by how likely each was held. */
  together(trial: Trial, signs: readonly number[] = trial.signs): number {
    const guesses = trial.suspected.homes.kind === 'every' ? this.beliefs.shareDue : this.beliefs.effects;
    const counts = this.of(trial);
    return logSum(
      guesses.map(({ share }, effect) => Math.log(share) + (counts[effect] ?? 0) + (signs[effect] ?? 0)),
    );
  }

  /** How much the signs add, by the effects the counts speak for. */
  signsAlone(trial: Trial): number {
    return (
      this.together(trial) -
      this.together(
        trial,
        trial.signs.map(() => 0),
      )
    );
  }
}

const groupOf = ({ homes }: Suspected, window: Window | null): Pick<Weighed, 'cells' | 'outOfTolerance'> => {
  if (homes.kind === 'group') {
    return { cells: homes.group.cells, outOfTolerance: homes.group.outOfTolerance ?? null };
  }
  return { cells: homes.kind === 'window' ? (window?.split.cells ?? null) : null, outOfTolerance: null };
};

const bestSets = (trials: readonly Trial[], ratios: Ratios): readonly Trial[] => {
  const best = new Map<string, { trial: Trial; score: number }>();
  for (const trial of trials) {
    if (trial.suspected.homes.kind !== 'group') continue;
    const score = trial.suspected.logPrior + ratios.together(trial);
    const soFar = best.get(trial.sameHomes);
    if (soFar === undefined || score > soFar.score) best.set(trial.sameHomes, { trial, score });
  }
  return [...best.values()]
    .sort((one, other) => other.score - one.score)
    .slice(0, JUDGED_FULLY)
    .map(({ trial }) => trial);
};

const normalised = (
  trials: readonly Trial[],
  ratios: Ratios,
  window: Window | null,
  { noCommonCause }: Beliefs,
): Posterior => {
  const logRatios = trials.map((trial) => ratios.together(trial));
  const logs = trials.map(
    ({ suspected }, at) => Math.log(1 - noCommonCause) + suspected.logPrior + (logRatios[at] ?? 0),
  );
  const nothing = Math.log(noCommonCause);
  const total = logSum([nothing, ...logs]);
  return {
    weighed: trials.map((trial, at) => ({
      cause: trial.cause,
      key: causeKey(trial.cause),
      sameHomes: trial.sameHomes,
      suspect: trial.suspect,
      suspected: trial.suspected,
      ...groupOf(trial.suspected, window),
      logRatio: logRatios[at] ?? 0,
      logSigns: ratios.signsAlone(trial),
      probability: Math.exp((logs[at] ?? -Infinity) - total),
    })),
    noCommonCause: Math.exp(nothing - total),
    window,
  };
};
