import { z } from 'zod';
import { DefectCard } from './screens';
import { Words } from './shapes';

const Interval = z.object({ low: z.number().nullable(), high: z.number().nullable() });
/** Yield of one station over the span: of the sections that left it. Rates are pairs; null where nothing left. */
export const YieldRow = z.object({
  station: z.string(),
  name: Words,
  left: z.number().int(),
  /** No nonconformance charged to it by the time they left. */
  clean: z.number().int(),
  /** None charged to it to this day, found later and in the field included. */
  cleanWithEscapes: z.number().int(),
  /** Left with nothing of the station open. */
  complete: z.number().int(),
  /** Caught and mended by the same crew before leaving. */
  mendedBeforeLeaving: z.number().int(),
  firstPass: z.number().nullable(),
  firstPassInterval: Interval,
  firstPassWithEscapes: z.number().nullable(),
  firstPassWithEscapesInterval: Interval,
  completeShare: z.number().nullable(),
  nonconformances: z.number().int(),
  punch: z.number().int(),
  shortages: z.number().int(),
  record: z.number().int(),
  /** Of what the line loses altogether (the logarithm of the rolled yield), the part lost here; null: not to be told. */
  lossShare: z.number().nullable(),
  /** The same station in the other span, where one was asked for. */
  against: z
    .object({
      left: z.number().int(),
      clean: z.number().int(),
      firstPass: z.number().nullable(),
      /** By Fisher's exact test, over all stations at a false discovery rate of 5 % (Benjamini and Hochberg). */
      now: z.enum(['better', 'worse', 'not-told-apart']),
    })
    .nullable(),
});
export const YieldAnswer = z.object({
  from: z.string(),
  to: z.string(),
  by: z.literal('station'),
  position: z.number().int(),
  interval: z.object({ method: z.string(), confidence: z.number() }),
  rows: z.array(YieldRow),
  /** Product of the stations' first-pass yields, as seen and with escapes. */
  rolled: z.number().nullable(),
  rolledWithEscapes: z.number().nullable(),
  against: z.object({ from: z.string(), to: z.string(), rolled: z.number().nullable() }).nullable(),
  /** Models that left in the span, to choose from. */
  models: z.array(z.string()),
});
/** The same for one station, by week (ISO weeks, Monday first). */
export const YieldTrendAnswer = z.object({
  station: z.string(),
  from: z.string(),
  to: z.string(),
  points: z.array(
    z.object({
      from: z.string(),
      to: z.string(),
      left: z.number().int(),
      clean: z.number().int(),
      cleanWithEscapes: z.number().int(),
      complete: z.number().int(),
      nonconformances: z.number().int(),
      firstPass: z.number().nullable(),
      firstPassInterval: Interval,
    }),
  ),
});
export const PassagesAnswer = z.object({
  passages: z.array(
    z.object({
      serial: z.string(),
      home: z.string(),
      station: z.string(),
      enteredAt: z.string(),
      leftAt: z.string().nullable(),
      clean: z.boolean(),
      cleanWithEscapes: z.boolean(),
      complete: z.boolean(),
      nonconformances: z.number().int(),
    }),
  ),
});
/** Worst first. */
export const DefectCountsAnswer = z.object({
  from: z.string(),
  to: z.string(),
  by: z.enum(['code', 'component', 'symptom', 'station', 'operation', 'crew', 'lot']),
  /** `cost`: counts stand for money, in this currency, and defects whose component has no cost are left out. */
  weigh: z.enum(['count', 'cost']),
  currency: z.string().nullable(),
  /** As the plant said them last. */
  costs: z.array(z.object({ component: z.string(), name: Words, cost: z.string() })),
  unpriced: z.number().int(),
  total: z.number(),
  rows: z.array(
    z.object({
      key: z.string(),
      says: Words,
      count: z.number(),
      share: z.number(),
      cumulative: z.number(),
    }),
  ),
});
export const DefectsAnswer = z.object({ defects: z.array(DefectCard) });

/** Homes in use up to an age, in days since somebody moved in. Null where no home has reached it. */
const FieldFigures = z.object({
  age: z.number().int(),
  homes: z.number().int(),
  /** Of them, watched to this age. */
  watched: z.number().int(),
  claims: z.number().int(),
  /** Share of homes with a first claim by then (Kaplan and Meier), and its interval on the log-log scale. */
  claimed: z.number().nullable(),
  interval: Interval,
  /** Claims a home has had by then, all of them (mean cumulative function), and its robust standard error. */
  mean: z.number().nullable(),
  meanError: z.number().nullable(),
});
export const FieldAnswer = z.object({
  asOf: z.string(),
  age: z.number().int(),
  homes: z.number().int(),
  claims: z.number().int(),
  overall: FieldFigures,
  ages: z.array(FieldFigures),
  /** By month of manufacture, `2026-03`, at the age asked for. */
  months: z.array(FieldFigures.extend({ month: z.string() })),
});
