import type { Beliefs, Guess } from './beliefs';
import { logSum } from './log-space';
import type { SourceShares } from './sources';
import type { ClaimedUnit } from './trace-counts';
import type { HabitRow, RecordMark } from './trace-rows';

/**
 * What single claims say of a source: as-found reports, and marks on the records of the operation suspected. Each is
 * weighed by the chance that this very claim is due to the cause, which follows from the effect: of a group claimed
 * five times as often, four claims in five are due to what sets it apart.
 */
export type Signs = {
  /** Log likelihood ratio of the signs, one for each chance given. */
  readonly of: (suspect: Suspect, due: readonly Due[]) => readonly number[];
};

export type Suspect = {
  readonly source: string;
  /** Places in `claimed` that belong to the group, and of which nobody knows. */
  readonly belong: readonly number[];
  readonly partly: readonly number[];
  /** The group was made by what was recorded, so that a missing record says nothing more. */
  readonly recordsKnown: boolean;
};

/** The chance that a claim is due to the cause: for units that belong, and for those of which nobody knows. */
export type Due = { readonly belong: number; readonly partly: number };

/** How much heavier than a handful of reports the fault map's own shares weigh. */
const REPORTS_THE_MAP_IS_WORTH = 4;
/** A report that speaks against the true source is this much rarer. */
const AGAINST_TRUE = 0.15;

export const signsOf = (
  claimed: readonly ClaimedUnit[],
  habits: readonly HabitRow[],
  context: { readonly shares: SourceShares; readonly beliefs: Beliefs },
): Signs => {
  const reports = reportsOf(claimed, context.shares);
  const marks = new Marks(claimed, habits);
  const { reliability, lifts } = context.beliefs;
  return {
    of: (suspect, due) => {
      const reported = [
        heard(reports, suspect, suspect.belong),
        heard(reports, suspect, suspect.partly),
      ] as const;
      const seen = marks.of(suspect);
      return due.map(
        (chance) => saidByReports(reported, chance, reliability) + saidByMarks(seen, chance, lifts),
      );
    },
  };
};

type Report = {
  readonly pointsTo: ReadonlySet<string>;
  readonly speaksAgainst: ReadonlySet<string>;
  /** How often such a report is met whatever the cause. */
  readonly usual: number;
};

/** Shares of what reports name: the fault map's, moved by what these reports say. */
const reportsOf = (claimed: readonly ClaimedUnit[], shares: SourceShares): readonly (readonly Report[])[] => {
  const named = new Map<string, number>();
  let count = 0;
  for (const { asFound } of claimed) {
    for (const { pointsTo } of asFound) {
      if (pointsTo.length > 0) count++;
      for (const source of pointsTo) named.set(source, (named.get(source) ?? 0) + 1 / pointsTo.length);
    }
  }
  const usualShare = (source: string): number =>
    (REPORTS_THE_MAP_IS_WORTH * Math.max(shares.get(source) ?? 0, 0.002) + (named.get(source) ?? 0)) /
    (REPORTS_THE_MAP_IS_WORTH + count);
  return claimed.map(({ asFound }) =>
    asFound.map(({ pointsTo, speaksAgainst }) => ({
      pointsTo: new Set(pointsTo),
      speaksAgainst: new Set(speaksAgainst),
      usual: Math.min(
        0.98,
        pointsTo.reduce((sum, source) => sum + usualShare(source), 0),
      ),
    })),
  );
};

/** The reports of some units, sorted by what they say of the suspect. */
type Heard = { readonly hits: readonly number[]; readonly misses: number; readonly against: number };

const heard = (
  reports: readonly (readonly Report[])[],
  { source }: Suspect,
  units: readonly number[],
): Heard => {
  const hits: number[] = [];
  let misses = 0;
  let against = 0;
  for (const unit of units) {
    for (const report of reports[unit] ?? []) {
      if (report.speaksAgainst.has(source)) against++;
      if (report.pointsTo.has(source)) hits.push(report.usual);
      else if (report.pointsTo.size > 0) misses++;
    }
  }
  return { hits, misses, against };
};

const saidByReports = (
  [belong, partly]: readonly [Heard, Heard],
  due: Due,
  reliability: readonly Guess[],
): number => {
  if (isSilent(belong) && isSilent(partly)) return 0;
  return logSum(
    reliability.map(
      ({ value, share }) =>
        Math.log(share) + saidOf(belong, due.belong, value) + saidOf(partly, due.partly, value),
    ),
  );
};

const isSilent = ({ hits, misses, against }: Heard): boolean =>
  hits.length === 0 && misses === 0 && against === 0;

const saidOf = ({ hits, misses, against }: Heard, due: number, reliable: number): number => {
  let sum = misses * Math.log(due * (1 - reliable) + 1 - due);
  for (const usual of hits) sum += Math.log((due * (reliable + (1 - reliable) * usual)) / usual + 1 - due);
  return sum + against * Math.log(due * AGAINST_TRUE + 1 - due);
};

/** Of the claimed units that belong, and of which nobody knows: how many have the mark. */
type Seen = {
  readonly mark: RecordMark;
  readonly habit: number;
  readonly belong: { readonly count: number; readonly of: number };
  readonly partly: { readonly count: number; readonly of: number };
};

class Marks {
  private readonly habits = new Map<string, HabitRow[]>();
  private readonly marked = new Map<string, Set<number>>();

  constructor(claimed: readonly ClaimedUnit[], habits: readonly HabitRow[]) {
    for (const habit of habits) {
      const soFar = this.habits.get(habit.operation);
      if (soFar === undefined) this.habits.set(habit.operation, [habit]);
      else soFar.push(habit);
    }
    claimed.forEach(({ marks }, unit) => {
      for (const { operation, mark } of marks) {
        const key = `${operation} ${mark}`;
        this.marked.set(key, (this.marked.get(key) ?? new Set()).add(unit));
      }
    });
  }

  of({ source, belong, partly, recordsKnown }: Suspect): readonly Seen[] {
    return (this.habits.get(source) ?? []).flatMap(({ mark, count, of }) => {
      if (mark === 'instrument-out' || (mark === 'missing' && recordsKnown)) return [];
      const units = this.marked.get(`${source} ${mark}`);
      const among = (places: readonly number[]): { count: number; of: number } => ({
        count: units === undefined ? 0 : places.filter((place) => units.has(place)).length,
        of: places.length,
      });
      return [{ mark, habit: (count + 0.5) / (of + 1), belong: among(belong), partly: among(partly) }];
    });
  }
}

const saidByMarks = (seen: readonly Seen[], due: Due, lifts: Beliefs['lifts']): number => {
  let sum = 0;
  for (const { mark, habit, belong, partly } of seen) {
    const guesses = lifts[mark];
    if (guesses.length === 1) continue;
    sum += logSum(
      guesses.map(({ value, share }) => {
        const lifted = Math.max(habit, Math.min(habit * value, 0.9));
        return (
          Math.log(share) +
          countLog(belong, { due: due.belong, lifted, habit }) +
          countLog(partly, { due: due.partly, lifted, habit })
        );
      }),
    );
  }
  return sum;
};

const countLog = (
  { count, of }: { readonly count: number; readonly of: number },
  { due, lifted, habit }: { readonly due: number; readonly lifted: number; readonly habit: number },
): number =>
  count * Math.log((due * lifted) / habit + 1 - due) +
  (of - count) * Math.log((due * (1 - lifted)) / (1 - habit) + 1 - due);
