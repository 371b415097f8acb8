import { normalReach } from '../distributions';

/** One unit: its age at the first claim, or its age today where none came (`event` false). */
export type Lifetime = { readonly time: number; readonly event: boolean };

export type SurvivalStep = {
  readonly time: number;
  /** Units of at least this age: one whose age ends at `time` is still at risk at `time`. */
  readonly atRisk: number;
  readonly events: number;
  /** Share without a claim past this age (Kaplan and Meier 1958). */
  readonly survival: number;
  /** Greenwood's standard error (1926). */
  readonly standardError: number;
  /** Cumulative hazard (Nelson 1969, Aalen 1978) and its standard error. */
  readonly cumulativeHazard: number;
  readonly hazardError: number;
};

/** One row an age at which something happened. */
export const kaplanMeier = (lifetimes: readonly Lifetime[]): readonly SurvivalStep[] => {
  let [survival, greenwood, hazard, hazardVariance] = [1, 0, 0, 0];
  return eventTimes(lifetimes).map((time) => {
    const { atRisk, events } = riskAt(lifetimes, time);
    survival *= 1 - events / atRisk;
    greenwood += events / (atRisk * (atRisk - events));
    hazard += events / atRisk;
    hazardVariance += events / (atRisk * atRisk);
    return {
      time,
      atRisk,
      events,
      survival,
      standardError: survival === 0 ? 0 : survival * Math.sqrt(greenwood),
      cumulativeHazard: hazard,
      hazardError: Math.sqrt(hazardVariance),
    };
  });
};

export const eventTimes = (lifetimes: readonly Lifetime[]): readonly number[] =>
  [...new Set(lifetimes.flatMap(({ time, event }) => (event ? [time] : [])))].sort((a, b) => a - b);

export const riskAt = (
  lifetimes: readonly Lifetime[],
  at: number,
): { readonly atRisk: number; readonly events: number } => ({
  atRisk: lifetimes.filter(({ time }) => time >= at).length,
  events: lifetimes.filter(({ time, event }) => event && time === at).length,
});

/** The scale on which the interval is symmetric. It has to be said beside every interval. */
export const SURVIVAL_SCALES = ['plain', 'log', 'log-log'] as const;
export type SurvivalScale = (typeof SURVIVAL_SCALES)[number];

/** Clipped to 0 and 1; not defined once nobody is left. */
export const survivalInterval = (
  { survival, standardError }: SurvivalStep,
  scale: SurvivalScale,
  confidence = 0.95,
): { readonly low: number; readonly high: number } => {
  const z = normalReach(confidence);
  if (scale === 'plain') {
    return {
      low: Math.max(0, survival - z * standardError),
      high: Math.min(1, survival + z * standardError),
    };
  }
  const relative = (z * standardError) / survival;
  if (scale === 'log') {
    return { low: survival * Math.exp(-relative), high: Math.min(1, survival * Math.exp(relative)) };
  }
  const reach = Math.exp(relative / Math.log(survival));
  return { low: Math.pow(survival, 1 / reach), high: Math.pow(survival, reach) };
};

/** The first age past which no more than half are without a claim; null while more than half are. */
export const medianLifetime = (steps: readonly SurvivalStep[]): number | null =>
  steps.find(({ survival }) => survival <= 0.5)?.time ?? null;
