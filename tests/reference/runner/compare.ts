/** How near two numbers have to be; it is told the expected one. */
export type Nearness = (actual: number, expected: number) => boolean;

/** Relative 1e-9. A value that is 0 in one tool and 1e-17 in the other is the same. */
export const exactly: Nearness = (actual, expected) =>
  Math.abs(actual - expected) <= 1e-9 * Math.abs(expected) + 2e-13;

/** Within half a unit of the last place as printed; with `digits`, of that many significant digits. */
export const asPrinted =
  (digits: number | undefined, stated: number | undefined): Nearness =>
  (actual, expected) => {
    const half = digits === undefined || expected === 0 ? halfUnit(expected) : halfDigit(expected, digits);
    return Math.abs(actual - expected) <= Math.max(half, stated ?? 0) + 1e-12;
  };

const halfUnit = (printed: number): number => {
  const [, decimals = ''] = /[.](\d+)/.exec(String(printed)) ?? [];
  const [, exponent = '0'] = /e(-?\d+)/.exec(String(printed)) ?? [];
  return 0.5 * Math.pow(10, Number(exponent) - decimals.length);
};

const halfDigit = (printed: number, digits: number): number =>
  0.5 * Math.pow(10, Math.floor(Math.log10(Math.abs(printed))) - digits + 1);

/** Where they differ, one line a place; nothing where they agree. */
export const differences = (
  actual: unknown,
  expected: unknown,
  near: Nearness,
  path = '',
): readonly string[] => {
  if (Array.isArray(expected)) return listDifferences(actual, expected, near, path);
  if (typeof expected === 'object' && expected !== null) {
    return Object.entries(expected).flatMap(([key, value]) =>
      differences(fieldOf(actual, key), value, near, path === '' ? key : `${path}.${key}`),
    );
  }
  // One printed limit stands for all points where they are alike.
  if (Array.isArray(actual)) return actual.flatMap((each) => differences(each, expected, near, path));

  return same(actual, expected, near) ? [] : [`${path}: ${show(actual)} instead of ${show(expected)}`];
};

const listDifferences = (
  actual: unknown,
  expected: readonly unknown[],
  near: Nearness,
  path: string,
): readonly string[] => {
  if (!Array.isArray(actual)) return [`${path}: ${show(actual)} instead of a list`];
  if (actual.length !== expected.length) {
    return [`${path}: ${actual.length} values instead of ${expected.length}`];
  }
  return expected.flatMap((value, at) => differences(actual[at], value, near, `${path}[${at + 1}]`));
};

const fieldOf = (value: unknown, key: string): unknown =>
  typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined;

const same = (actual: unknown, expected: unknown, near: Nearness): boolean => {
  const [seen, wanted] = [asNumber(actual), asNumber(expected)];
  if (seen === null || wanted === null) return actual === expected;
  return seen === wanted || near(seen, wanted);
};

/** "Infinity" and "17/70" are numbers written as text. */
const asNumber = (value: unknown): number | null => {
  if (typeof value === 'number') return value;
  if (value === 'Infinity') return Infinity;
  if (value === '-Infinity') return -Infinity;
  const [, over, under] = typeof value === 'string' ? (/^(\d+)\/(\d+)$/.exec(value) ?? []) : [];
  return over === undefined || under === undefined ? null : Number(over) / Number(under);
};

const show = (value: unknown): string => (value === undefined ? 'nothing' : JSON.stringify(value));
