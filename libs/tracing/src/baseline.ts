/**
 * How often units are complained of without any cause in particular: a rate of its own for each band of time and each
 * model, held near the common rate by a prior. A model that always draws more claims, or a month that has had longer
 * to draw them, is then no evidence against a crew that happened to build most of it.
 *
 * A unit is claimed or not: its chance is 1 - exp(-rate), so that a group in which nearly all are claimed fits as well.
 */

/** Like units in a row: same stratum, same standing toward the cause under trial. */
export type Rows = {
  readonly band: readonly number[];
  readonly model: readonly number[];
  readonly units: readonly number[];
  readonly claimed: readonly number[];
  /** Log of how much the rate is raised or lowered before band and model have their say. */
  readonly offset: readonly number[];
};

export type Effects = {
  readonly common: number;
  readonly bands: Float64Array;
  readonly models: Float64Array;
};

/** How far bands and models may stray from the common rate: the standard deviation of the log rate. */
export type Spread = { readonly bands: number; readonly models: number };

export type Fit = { readonly effects: Effects; readonly logLikelihood: number };

const SWEEPS = 3;

/** The most probable effects, and how likely the claims are under them, effects integrated out (Laplace). */
export const fitEffects = (rows: Rows, start: Effects, spread: Spread, sweeps: number = SWEEPS): Fit => {
  const { bands, models } = start;
  const state = {
    common: start.common,
    bands: Float64Array.from(bands),
    models: Float64Array.from(models),
    rate: new Float64Array(rows.units.length),
  };
  setRates(rows, state);
  let curvature = 0;
  for (let sweep = 0; sweep < sweeps; sweep++) {
    curvature = moveCommon(rows, state);
    curvature += moveEffects(rows, state, { of: rows.band, values: state.bands, spread: spread.bands });
    curvature += moveEffects(rows, state, { of: rows.model, values: state.models, spread: spread.models });
  }
  return {
    effects: { common: state.common, bands: state.bands, models: state.models },
    logLikelihood:
      logLikelihoodAt(rows, state.rate) -
      penalty(state.bands, spread.bands) -
      penalty(state.models, spread.models) -
      curvature / 2,
  };
};

/** Where a fit starts from: one rate for all. */
export const flatEffects = (rows: Rows, bands: number, models: number): Effects => {
  let weight = 0;
  let claimed = 0;
  rows.units.forEach((units, row) => {
    weight += units * Math.exp(rows.offset[row] ?? 0);
    claimed += rows.claimed[row] ?? 0;
  });
  return {
    common: Math.log(Math.max(claimed, 0.5) / Math.max(weight, 1)),
    bands: new Float64Array(bands),
    models: new Float64Array(models),
  };
};

type State = { common: number; bands: Float64Array; models: Float64Array; rate: Float64Array };

const setRates = (rows: Rows, state: State): void => {
  for (let row = 0; row < rows.units.length; row++) {
    const band = state.bands[rows.band[row] ?? 0] ?? 0;
    const model = state.models[rows.model[row] ?? 0] ?? 0;
    state.rate[row] = Math.exp((rows.offset[row] ?? 0) + state.common + band + model);
  }
};

/** A step may not be wilder than this: far from the top the curve misleads. */
const LONGEST_STEP = 2;

const bounded = (step: number): number => Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, step));

/** First derivative and information of a row by the log of its rate. */
const slopeOf = (units: number, claimed: number, rate: number): { slope: number; information: number } => {
  const none = Math.exp(-rate);
  const some = -Math.expm1(-rate);
  const ratio = some > 0 ? (rate * none) / some : 1;
  return { slope: claimed * ratio - (units - claimed) * rate, information: units * rate * ratio };
};

const at = (values: ArrayLike<number>, place: number): number => values[place] ?? 0;

const moveCommon = (rows: Rows, state: State): number => {
  let slope = 0;
  let information = 1e-9;
  for (let row = 0; row < rows.units.length; row++) {
    const moved = slopeOf(at(rows.units, row), at(rows.claimed, row), at(state.rate, row));
    slope += moved.slope;
    information += moved.information;
  }
  const step = bounded(slope / information);
  state.common += step;
  const times = Math.exp(step);
  for (let row = 0; row < rows.units.length; row++) state.rate[row] = (state.rate[row] ?? 0) * times;
  return Math.log(information);
};

type Effect = {
  readonly of: readonly number[];
  readonly values: Float64Array;
  readonly spread: number;
};

const moveEffects = (rows: Rows, state: State, { of, values, spread }: Effect): number => {
  const precision = 1 / (spread * spread);
  const slopes = new Float64Array(values.length);
  const informations = new Float64Array(values.length).fill(precision);
  for (let row = 0; row < rows.units.length; row++) {
    const effect = at(of, row);
    const moved = slopeOf(at(rows.units, row), at(rows.claimed, row), at(state.rate, row));
    slopes[effect] = at(slopes, effect) + moved.slope;
    informations[effect] = at(informations, effect) + moved.information;
  }
  const steps = slopes.map((slope, effect) =>
    bounded((slope - at(values, effect) * precision) / at(informations, effect)),
  );
  values.forEach((value, effect) => {
    values[effect] = value + at(steps, effect);
  });
  const times = steps.map(Math.exp);
  state.rate.forEach((rate, row) => {
    state.rate[row] = rate * at(times, at(of, row));
  });
  return informations.reduce((sum, information) => sum + Math.log(information / precision), 0);
};

const penalty = (values: Float64Array, spread: number): number => {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum / (2 * spread * spread);
};

const logLikelihoodAt = (rows: Rows, rate: Float64Array): number => {
  let sum = 0;
  for (let row = 0; row < rows.units.length; row++) {
    const claimed = at(rows.claimed, row);
    const expected = at(rate, row);
    if (claimed > 0) sum += claimed * Math.log(-Math.expm1(-expected));
    sum -= (at(rows.units, row) - claimed) * expected;
  }
  return sum;
};
