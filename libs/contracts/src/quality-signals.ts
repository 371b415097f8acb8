import { z } from 'zod';
import { Day, Note, Words, when } from './shapes';

const Interval = z.object({ low: z.number().nullable(), high: z.number().nullable() });
const Counted = z.object({ count: z.number().int(), of: z.number().int() });

/** Sections with a nonconformance, before a change and since: pairs, shares and how sure they are. */
const Change = z.object({
  /** Day of the first section after which the score never came back to 0. */
  since: z.string(),
  before: Counted,
  beforeInterval: Interval,
  after: Counted,
  afterInterval: Interval,
});

/** A station's unit-by-unit chart raised an alarm. */
export const Alarm = z.object({
  day: z.string(),
  change: Change,
  acknowledged: z
    .object({ note: z.string().nullable(), by: z.string().nullable(), at: z.string() })
    .nullable(),
});

/** How the unit-by-unit chart of a station is built, and what it costs. */
export const UnitPlan = z.object({
  usual: z.number(),
  sought: z.number(),
  gain: z.number().int(),
  limit: z.number().int(),
  /** Sections, on average, between two false alarms. */
  unitsBetween: z.number(),
  baseline: z.object({
    from: z.string(),
    to: z.string(),
    counted: Counted,
    /** `person`: somebody set it; `assumed`: the program took the days before the last half year on record. */
    by: z.enum(['person', 'assumed']),
  }),
});

export const BudgetShape = z.object({
  falseAlarmsPerMonth: z.number(),
  charts: z.number().int(),
  workdaysBetween: z.number(),
  rules: z.enum(['few-counts', 'western-electric', 'nelson']),
  /** Points between two false signals of the run rules, on one weekly chart; null where it is not known. */
  pointsBetween: z.number().nullable(),
});

/** Each station at a glance: is it getting worse, since when, how sure. */
export const SignalsAnswer = z.object({
  from: z.string(),
  to: z.string(),
  position: z.number().int(),
  budget: BudgetShape,
  stations: z.array(
    z.object({
      station: z.string(),
      name: Words,
      /** Null: nothing has left it in the days the chart looks back on. */
      plan: UnitPlan.nullable(),
      alarm: Alarm.nullable(),
      weeks: z.array(z.object({ from: z.string(), left: z.number().int(), clean: z.number().int() })),
    }),
  ),
});

const RuleHit = z.object({ rule: z.string(), members: z.array(z.number().int()) });

/** A station's charts over a span. */
export const StationChartAnswer = z.object({
  station: z.string(),
  name: Words,
  from: z.string(),
  to: z.string(),
  position: z.number().int(),
  budget: BudgetShape,
  weekly: z.object({
    kind: z.enum(['p', 'p-prime']),
    why: z.enum(['counts-as-chance', 'varies-more-than-chance', 'too-few-expected', 'too-few-points']),
    phases: z.array(
      z.object({
        from: z.string(),
        center: z.number(),
        inflation: z.number(),
        baselineTo: z.string(),
        note: z.string().nullable(),
      }),
    ),
    points: z.array(
      z.object({
        from: z.string(),
        to: z.string(),
        left: z.number().int(),
        nonconforming: z.number().int(),
        value: z.number().nullable(),
        interval: Interval,
        center: z.number().nullable(),
        lower: z.number().nullable(),
        upper: z.number().nullable(),
        phase: z.number().int(),
        beyond: z.boolean(),
        rules: z.array(RuleHit),
      }),
    ),
  }),
  unit: z
    .object({
      plan: UnitPlan,
      /** Score after each day on which sections left. */
      days: z.array(
        z.object({
          day: z.string(),
          left: z.number().int(),
          nonconforming: z.number().int(),
          highest: z.number().int(),
          score: z.number().int(),
        }),
      ),
      alarms: z.array(Alarm),
    })
    .nullable(),
  /** Good sections between one with a nonconformance and the next, the latest last. */
  gaps: z.object({
    center: z.number(),
    upper: z.number(),
    gaps: z.array(z.number().int()),
  }),
  annotations: z.array(z.object({ day: z.string(), note: z.string().nullable(), by: z.string().nullable() })),
  /** Nonconformances charged here, by where they were found and how long after the work. */
  found: z.array(
    z.object({
      /** Null: in the field. */
      at: z.string().nullable(),
      name: Words.nullable(),
      /** Stations later; 0: here; null: not on the line. */
      stationsLater: z.number().int().nullable(),
      count: z.number().int(),
      /** Median of days from leaving this station; null where it was found before. */
      daysLater: z.number().nullable(),
    }),
  ),
});

export const ChartNoteRequest = z.strictObject({ day: Day, note: Note, ...when });
export const BaselineRequest = z.strictObject({
  from: Day,
  to: Day,
  note: Note.describe('Why these days'),
  ...when,
});
export const AcknowledgementRequest = z.strictObject({
  day: Day.describe('Day of the alarm'),
  note: Note.describe('The cause'),
  ...when,
});
export const BudgetRequest = z.strictObject({
  falseAlarmsPerMonth: z
    .string()
    .regex(/^(0[.]\d{1,3}|[1-9]\d?([.]\d{1,2})?)$/, 'a decimal number such as 0.25')
    .refine((text) => Number(text) > 0, 'more than 0: a plant that bears no false alarm hears no true one'),
  rules: z.enum(['few-counts', 'western-electric', 'nelson']),
  ...when,
});
export const CostsRequest = z.strictObject({
  currency: z.string().regex(/^[A-Z]{3}$/, 'a currency by ISO 4217, such as USD'),
  costs: z
    .array(
      z.strictObject({
        component: z.string().min(1),
        cost: z.string().regex(/^(0|[1-9]\d{0,8})([.]\d{1,2})?$/, 'an amount such as 85 or 12.50'),
      }),
    )
    .max(1_000),
  ...when,
});
