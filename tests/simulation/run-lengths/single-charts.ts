import {
  chanceBeyond,
  cusumRunLength,
  gainFor,
  limitFor,
  ruleRunLength,
  RULE_SETS,
  runSignals,
  runUnitCusum,
  shewhartRunLength,
  unitCusumRunLength,
} from '@libs/quality';
import type { RunRule } from '@libs/quality';
import { chanceFrom } from './chance';
import type { Chance } from './chance';

export type Stated = {
  readonly chart: string;
  readonly stated: number;
  readonly seen: number;
  readonly error: number;
};

const normal = (chance: Chance): number =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

const mean = (draws: readonly number[]): { readonly seen: number; readonly error: number } => {
  const seen = draws.reduce((sum, each) => sum + each, 0) / draws.length;
  const variance = draws.reduce((sum, each) => sum + (each - seen) ** 2, 0) / (draws.length - 1);
  return { seen, error: Math.sqrt(variance / draws.length) };
};

const drawn = (runs: number, draw: () => number): ReturnType<typeof mean> =>
  mean(Array.from({ length: runs }, draw));

/** Points up to the first signal of these rules, on normal values. */
const pointsToRule = (rules: readonly RunRule[], chance: Chance): number => {
  const window: number[] = [];
  for (let point = 1; ; point += 1) {
    window.push(normal(chance));
    if (window.length > 9) window.shift();
    if (runSignals(window, rules).some(({ at }) => at === window.length - 1)) return point;
  }
};

const pointsToCusum = (slack: number, limit: number, chance: Chance): number => {
  let score = 0;
  for (let point = 1; ; point += 1) {
    score = Math.max(0, score + normal(chance) - slack);
    if (score > limit) return point;
  }
};

/** Run lengths that the library states, and as they come out. */
export const singleCharts = (runs: number, seed: number): readonly Stated[] => {
  const chance = chanceFrom(seed);
  const gain = gainFor(0.03, 0.06);
  const design = { gain, limit: limitFor(gain, 0.03, 3000) };
  const units = runs * 3000;
  const signals = runUnitCusum(
    Array.from({ length: units }, () => chance() < 0.03),
    design,
  ).signals;
  const gaps = signals.map((at, index) => at - (signals[index - 1] ?? -1));
  return [
    {
      chart: 'one point beyond 3 sigma (points)',
      stated: shewhartRunLength(chanceBeyond(3)),
      ...drawn(runs, () => pointsToRule(['WE1'], chance)),
    },
    {
      chart: 'Western Electric, all four (points)',
      stated: ruleRunLength(RULE_SETS['western-electric']),
      ...drawn(runs, () => pointsToRule(RULE_SETS['western-electric'], chance)),
    },
    {
      chart: 'few counts: beyond 3 sigma, eight on one side (points)',
      stated: ruleRunLength(RULE_SETS['few-counts']),
      ...drawn(runs, () => pointsToRule(RULE_SETS['few-counts'], chance)),
    },
    {
      chart: 'CUSUM, one side, k = 0.5, h = 4 (points)',
      stated: cusumRunLength({ slack: 0.5, limit: 4 }),
      ...drawn(runs, () => pointsToCusum(0.5, 4, chance)),
    },
    { chart: 'unit by unit, 3 % usual (sections)', stated: unitCusumRunLength(design, 0.03), ...mean(gaps) },
  ];
};
