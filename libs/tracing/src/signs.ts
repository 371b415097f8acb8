import type { Beliefs } from './beliefs';
import type { Due, Suspect } from './due';
import { logSum } from './log-space';
import { Reports } from './reports';
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

export const signsOf = (
  claimed: readonly ClaimedUnit[],
  habits: readonly HabitRow[],
  context: { readonly shares: SourceShares; readonly beliefs: Beliefs },
): Signs => {
  const reports = new Reports(claimed, context.shares, context.beliefs);
  const marks = new Marks(claimed, habits);
  const { lifts } = context.beliefs;
  return {
    of: (suspect, due) => {
      const reported = reports.of(suspect);
      const seen = marks.of(suspect);
      return due.map((chance) => reported(chance) + saidByMarks(seen, chance, lifts));
    },
  };
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
