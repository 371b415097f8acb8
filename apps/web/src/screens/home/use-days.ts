import { useTimes } from '../../words/use-times';
import type { Entry } from './entries';

export type Day = { readonly day: string; readonly entries: readonly Entry[] };

/** Entries by the plant's own day, in the order they came. */
export const useDays = (entries: readonly Entry[]): readonly Day[] => {
  const times = useTimes();
  const days = new Map<string, Entry[]>();
  for (const entry of entries) {
    const day = times.day(entry.occurredAt);
    const its = days.get(day);
    if (its === undefined) days.set(day, [entry]);
    else its.push(entry);
  }
  return [...days].map(([day, its]) => ({ day, entries: its }));
};
