/**
 * Run rules by name. They read distances from the center in standard deviations (see `standardised`), in time order.
 * - Western Electric (Statistical Quality Control Handbook 1956): WE1 to WE4.
 * - Nelson (Journal of Quality Technology 16, 1984, 237-239): N1 to N8.
 * Beyond is strict. A point on the center is on neither side; equal neighbours end a trend and an alternation.
 * All four Western Electric rules together signal falsely every 92 points, WE1 alone every 370 (normal data).
 */
export const RUN_RULES = [
  'WE1',
  'WE2',
  'WE3',
  'WE4',
  'N1',
  'N2',
  'N3',
  'N4',
  'N5',
  'N6',
  'N7',
  'N8',
] as const;
export type RunRule = (typeof RUN_RULES)[number];

export const WESTERN_ELECTRIC: readonly RunRule[] = ['WE1', 'WE2', 'WE3', 'WE4'];
export const NELSON: readonly RunRule[] = ['N1', 'N2', 'N3', 'N4', 'N5', 'N6', 'N7', 'N8'];

/** Sets a plant can choose from. On charts of few counts the zone rules cry wolf: `few-counts` has only what holds there. */
export const RULE_SETS = {
  'few-counts': ['WE1', 'WE4'],
  'western-electric': WESTERN_ELECTRIC,
  nelson: NELSON,
} as const satisfies Readonly<Record<string, readonly RunRule[]>>;
export type RuleSet = keyof typeof RULE_SETS;

/** `at`: the last point of the pattern; `members`: the points that make it, both from 0. */
export type RuleSignal = {
  readonly rule: RunRule;
  readonly at: number;
  readonly members: readonly number[];
};

/** The members (within the window) of a pattern that ends with the window's last point; null for none. */
type Pattern = (window: readonly number[]) => readonly number[] | null;

type Rule = { readonly length: number; readonly pattern: Pattern };

const all = (window: readonly number[]): readonly number[] => window.map((_, at) => at);

const beyond =
  (sigmas: number, least: number): Pattern =>
  (window) => {
    const last = window.at(-1) ?? 0;
    if (Math.abs(last) <= sigmas) return null;
    const side = Math.sign(last);
    const members = window.flatMap((z, at) => (z * side > sigmas ? [at] : []));
    return members.length >= least ? members : null;
  };

const sameSide: Pattern = (window) =>
  window.every((z) => z > 0) || window.every((z) => z < 0) ? all(window) : null;

const steps = (window: readonly number[]): readonly number[] =>
  window.slice(1).map((z, at) => Math.sign(z - (window[at] ?? z)));

const trending: Pattern = (window) => {
  const [first, ...rest] = steps(window);
  return first !== 0 && rest.every((step) => step === first) ? all(window) : null;
};

const alternating: Pattern = (window) => {
  const directions = steps(window);
  const turns = directions.every(
    (step, at) => step !== 0 && (at === 0 || step === -(directions[at - 1] ?? 0)),
  );
  return turns ? all(window) : null;
};

const hugging: Pattern = (window) => (window.every((z) => Math.abs(z) <= 1) ? all(window) : null);

const avoiding: Pattern = (window) =>
  window.every((z) => Math.abs(z) > 1) && window.some((z) => z > 0) && window.some((z) => z < 0)
    ? all(window)
    : null;

const RULES: Readonly<Record<RunRule, Rule>> = {
  WE1: { length: 1, pattern: beyond(3, 1) },
  WE2: { length: 3, pattern: beyond(2, 2) },
  WE3: { length: 5, pattern: beyond(1, 4) },
  WE4: { length: 8, pattern: sameSide },
  N1: { length: 1, pattern: beyond(3, 1) },
  N2: { length: 9, pattern: sameSide },
  N3: { length: 6, pattern: trending },
  N4: { length: 14, pattern: alternating },
  N5: { length: 3, pattern: beyond(2, 2) },
  N6: { length: 5, pattern: beyond(1, 4) },
  N7: { length: 15, pattern: hugging },
  N8: { length: 8, pattern: avoiding },
};

/** Rules that may be met before their window is full: two of two beyond 2 are two of three already. */
const FEWEST: Readonly<Partial<Record<RunRule, number>>> = { WE2: 2, WE3: 4, N5: 2, N6: 4 };

/** All signals, by their last point. Points that are not there (null) are passed over, as if never plotted. */
export const runSignals = (
  distances: readonly (number | null)[],
  rules: readonly RunRule[],
): readonly RuleSignal[] => {
  const plotted = distances.flatMap((z, at) => (z === null ? [] : [{ z, at }]));
  return plotted.flatMap((point, index) =>
    rules.flatMap((rule) => {
      const { length, pattern } = RULES[rule];
      const window = plotted.slice(Math.max(0, index + 1 - length), index + 1);
      if (window.length < (FEWEST[rule] ?? length)) return [];

      const members = pattern(window.map(({ z }) => z));
      if (members === null) return [];
      return [{ rule, at: point.at, members: members.map((member) => window[member]?.at ?? point.at) }];
    }),
  );
};

/** Points the rule that looks back furthest has to see. */
export const longestWindow = (rules: readonly RunRule[]): number =>
  rules.reduce((most, rule) => Math.max(most, RULES[rule].length), 1);
