import type { Beliefs } from './beliefs';
import { fitEffects, flatEffects } from './baseline';
import type { Effects, Fit, Rows } from './baseline';
import type { GroupCell, Stratum } from './trace-counts';

/** How likely the claims fell as they did, were units of a group claimed more often than the others. */
export type Association = {
  readonly withoutCause: Fit;
  /** Log likelihood ratio against no common cause, one for each effect of the beliefs, effects refitted. */
  readonly full: (group: Split) => readonly number[];
  /** The same, quickly: effects as they are without a cause, and only the sum of claims kept. */
  readonly quick: (group: Split) => readonly number[];
};

/** A group's units by stratum, and its claimed units by stratum. */
export type Split = {
  readonly cells: readonly GroupCell[];
  readonly claimed: readonly number[];
  readonly partly: readonly number[];
};

/** Half a home belongs, or one of about two values that nobody recorded: half the chance. */
export const PARTLY_SHARE = 0.5;

/** Past these a group is judged with everything refitted in fewer steps: the start is good. */
const REFIT_SWEEPS = 2;

export const associationOf = (
  strata: readonly Stratum[],
  stratumOfClaimed: readonly number[],
  { effects, spread }: Pick<Beliefs, 'effects' | 'spread'>,
): Association => {
  const base = baseRows(strata);
  const bands = 1 + Math.max(0, ...strata.map(({ band }) => band));
  const models = 1 + Math.max(0, ...strata.map(({ model }) => model));
  const withoutCause = fitEffects(base, flatEffects(base, bands, models), spread, 8);
  const expected = expectedOf(strata, withoutCause.effects);
  const total = expected.reduce((sum, rate, at) => sum + rate * (strata[at]?.units ?? 0), 0);
  return {
    withoutCause,
    full: (group) => {
      let start = withoutCause.effects;
      const rows = splitRows(strata, stratumOfClaimed, group);
      return effects.map(({ value }) => {
        const fit = fitEffects(raised(rows, value), start, spread, REFIT_SWEEPS);
        start = fit.effects;
        return fit.logLikelihood - withoutCause.logLikelihood;
      });
    },
    quick: (group) => {
      let sure = 0;
      let partly = 0;
      for (const cell of group.cells) {
        sure += (expected[cell.stratum] ?? 0) * cell.units;
        partly += (expected[cell.stratum] ?? 0) * cell.partly;
      }
      return effects.map(({ value }) => {
        const maybe = 1 + PARTLY_SHARE * (value - 1);
        const whole = total + (value - 1) * sure + (maybe - 1) * partly;
        return (
          group.claimed.length * Math.log(value) +
          group.partly.length * Math.log(maybe) -
          stratumOfClaimed.length * Math.log(whole / total)
        );
      });
    },
  };
};

const baseRows = (strata: readonly Stratum[]): Rows => ({
  band: strata.map(({ band }) => band),
  model: strata.map(({ model }) => model),
  units: strata.map(({ units }) => units),
  claimed: strata.map(({ claimed }) => claimed),
  offset: strata.map(({ seasoned }) => Math.log(seasoned)),
});

const expectedOf = (strata: readonly Stratum[], effects: Effects): readonly number[] =>
  strata.map(
    ({ band, model, seasoned }) =>
      seasoned * Math.exp(effects.common + (effects.bands[band] ?? 0) + (effects.models[model] ?? 0)),
  );

type Grown = {
  band: number[];
  model: number[];
  units: number[];
  claimed: number[];
  offset: number[];
  /** How surely the row's units belong: 0, 1 or the share of the partly. */
  belongs: number[];
};

/** The strata with the group's units, and those of which nobody knows, in rows of their own. */
const splitRows = (strata: readonly Stratum[], stratumOfClaimed: readonly number[], group: Split): Grown => {
  const rows: Grown = { band: [], model: [], units: [], claimed: [], offset: [], belongs: [] };
  const claimed = countBy(group.claimed, stratumOfClaimed);
  const partly = countBy(group.partly, stratumOfClaimed);
  const cells = new Map(group.cells.map((cell) => [cell.stratum, cell]));
  strata.forEach((stratum, at) => {
    const cell = cells.get(at) ?? NO_UNITS;
    const own = { units: cell.units, claimed: claimed.get(at) ?? 0 };
    const maybe = { units: cell.partly, claimed: partly.get(at) ?? 0 };
    const others = {
      units: stratum.units - own.units - maybe.units,
      claimed: stratum.claimed - own.claimed - maybe.claimed,
    };
    add(rows, stratum, { ...others, belongs: 0 });
    add(rows, stratum, { ...own, belongs: 1 });
    add(rows, stratum, { ...maybe, belongs: PARTLY_SHARE });
  });
  return rows;
};

const NO_UNITS = { units: 0, partly: 0 };

const raised = (rows: Grown, times: number): Rows => ({
  ...rows,
  offset: rows.offset.map((offset, row) => offset + Math.log(1 + (rows.belongs[row] ?? 0) * (times - 1))),
});

const add = (
  rows: Grown,
  { band, model, seasoned }: Stratum,
  part: { readonly units: number; readonly claimed: number; readonly belongs: number },
): void => {
  if (part.units <= 0) return;
  rows.band.push(band);
  rows.model.push(model);
  rows.units.push(part.units);
  rows.claimed.push(part.claimed);
  rows.offset.push(Math.log(seasoned));
  rows.belongs.push(part.belongs);
};

const countBy = (places: readonly number[], stratumOf: readonly number[]): ReadonlyMap<number, number> => {
  const counts = new Map<number, number>();
  for (const place of places) {
    const stratum = stratumOf[place] ?? 0;
    counts.set(stratum, (counts.get(stratum) ?? 0) + 1);
  }
  return counts;
};
