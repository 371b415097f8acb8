import { normalCdf, normalUpperTail } from '../distributions';
import { longestWindow, runSignals } from './run-rules';
import type { RuleSet, RunRule } from './run-rules';

/**
 * Points, on average, between two false signals when these rules are read together on normal data: what a set of rules
 * costs (Champ and Woodall 1987, who print 91.75 for the four of Western Electric).
 *
 * Points fall into zones a standard deviation wide. What the rules can still see of the past is a state; states that
 * every rule sees alike are one. For rules by zone and side only: not trends (N3, N4), nor those of the innermost zone (N7, N8).
 */
export const ruleRunLength = (rules: readonly RunRule[]): number => {
  const states = explore(rules);
  const times = new Float64Array(states.length).fill(1);
  for (let sweep = 0; sweep < SWEEPS; sweep += 1) {
    for (const [at, next] of states.entries()) {
      times[at] = next.reduce((time, { to, chance }) => time + chance * (times[to] ?? 0), 1);
    }
  }
  return times[0] ?? NaN;
};

/** The time from a state shrinks its error by 1 - 1/370 a sweep at the slowest. */
const SWEEPS = 10_000;

/** A value inside each zone, and the chance of it; what is beyond 3 is a signal under every set. */
const ZONES = [0, 1, 2].flatMap((zone) => {
  const chance = normalCdf(zone + 1) - normalCdf(zone);
  return [
    { z: zone + 0.5, chance },
    { z: -zone - 0.5, chance },
  ];
});
/** Beyond 3 sigma. */
const FAR = [
  { z: 3.5, chance: normalUpperTail(3) },
  { z: -3.5, chance: normalUpperTail(3) },
];

type Step = { readonly to: number; readonly chance: number };

/** All states that can be reached without a signal, from an empty chart on, and where each leads. */
const explore = (rules: readonly RunRule[]): readonly (readonly Step[])[] => {
  const remembered = longestWindow(rules) - 1;
  const known = new Map<string, number>([['', 0]]);
  const pasts: (readonly number[])[] = [[]];
  const states: (readonly Step[])[] = [];
  for (let at = 0; at < pasts.length; at += 1) {
    const past = pasts[at] ?? [];
    states.push(
      [...ZONES, ...FAR].flatMap(({ z, chance }) => {
        const points = [...past, z];
        if (runSignals(points, rules).some((signal) => signal.at === points.length - 1)) return [];

        const kept = essence(points.slice(points.length - Math.min(points.length, remembered)));
        const key = kept.join();
        const to = known.get(key) ?? pasts.push(kept) - 1;
        known.set(key, to);
        return [{ to, chance }];
      }),
    );
  }
  return states;
};

/**
 * The last points with all that no rule can still see rubbed out: how far out a point was counts for five points, on
 * which side of the center it was only while the run on that side goes on.
 */
const essence = (points: readonly number[]): readonly number[] => {
  const side = Math.sign(points.at(-1) ?? 0);
  const runStart = points.findLastIndex((z) => Math.sign(z) !== side) + 1;
  const kept = points.map((z, at) => faded(z, points.length - at, at >= runStart));
  const first = kept.findIndex((z) => z !== FADED);
  return first === -1 ? [] : kept.slice(first);
};

/** On no side and in no zone. */
const FADED = 0;

const faded = (z: number, age: number, inRun: boolean): number => {
  const size = Math.abs(z);
  if (size > 2 && age <= 2) return z;
  if (size > 1 && age <= 4) return Math.sign(z) * 1.5;
  return inRun ? Math.sign(z) * 0.5 : FADED;
};

/**
 * What the sets cost, worked out beforehand by `ruleRunLength` since that takes a second; a test holds them to it.
 * Nelson's look at trends, which it does not reach.
 */
export const RULE_SET_RUN_LENGTHS: Readonly<Record<RuleSet, number | null>> = {
  'few-counts': 152.73,
  'western-electric': 91.75,
  nelson: null,
};
