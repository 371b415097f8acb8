import type { Words } from '@libs/judge';

type Range = { readonly low: number | null; readonly high: number | null };
type Counted = { readonly count: number; readonly of: number };

/** One week of a station on its control chart: the share of sections with a nonconformance. */
export type WeeklyPoint = {
  readonly from: string;
  readonly left: number;
  readonly nonconforming: number;
  readonly value: number | null;
  readonly interval: Range;
  readonly center: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  readonly beyond: boolean;
  readonly phase: number;
  readonly rules: readonly { readonly rule: string }[];
};

export type WeeklyAlarm = {
  readonly day: string;
  readonly change: { readonly since: string; readonly before: Counted; readonly after: Counted };
  readonly acknowledged: { readonly note: string | null; readonly by: string | null } | null;
};

/** What one page says of one station. */
export type WeeklyStation = {
  readonly name: Words;
  readonly left: number;
  readonly clean: number;
  readonly cleanWithEscapes: number;
  readonly complete: number;
  readonly interval: Range;
  readonly kind: 'p' | 'p-prime';
  readonly points: readonly WeeklyPoint[];
  readonly alarms: readonly WeeklyAlarm[];
  /** Worst first, as many as are worth a page. */
  readonly defects: readonly { readonly says: Words; readonly count: number; readonly share: number }[];
  readonly found: readonly {
    readonly name: Words | null;
    readonly count: number;
    readonly daysLater: number | null;
  }[];
  readonly notes: readonly { readonly day: string; readonly note: string | null }[];
};

export type WeeklyReport = {
  readonly plant: string;
  readonly from: string;
  readonly to: string;
  readonly position: number;
  readonly budget: { readonly falseAlarmsPerMonth: number; readonly charts: number };
  readonly rolled: number | null;
  readonly governing: Words;
  readonly stations: readonly WeeklyStation[];
};
