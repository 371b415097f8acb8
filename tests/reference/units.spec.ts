import { UcumLhcUtils } from '@lhncbc/ucum-lhc';
import type { Rational } from '@libs/kernel';
import { converted, measureUnit, measureUnits } from '@libs/kernel';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Sources: the units a factory-built-home plant records with factors (cases/plant-units.json: UCUM codes under the
 * UCUM licence, checked there against UN/ECE Recommendation 20), and @lhncbc/ucum-lhc 7.1.10 as an oracle.
 * Both work in floats; ours is exact, so that they may differ by float noise and by nothing else.
 */
const FLOAT_NOISE = 1e-12;

type ListedUnit = {
  readonly kind: string;
  readonly ucum: string;
  readonly ucumBase: string | null;
  readonly factorToBase: number | null;
};
const LISTED: readonly ListedUnit[] = JSON.parse(
  readFileSync(join(__dirname, 'cases', 'plant-units.json'), 'utf8'),
).units;
const UCUM = UcumLhcUtils.getInstance();

const asNumber = ({ num, den }: Rational): number => Number(num) / Number(den);
const expectClose = (actual: number, expected: number): void => {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(FLOAT_NOISE * Math.max(1e-6, Math.abs(expected)));
};

/** Relative humidity is a ratio; the list names its percent sign under both kinds. */
const kindOf = ({ kind }: ListedUnit): string => (kind === 'humidity' ? 'ratio' : kind);

describe('the 51 units a plant records (plant-units.json)', () => {
  it('are 51', () => {
    expect(LISTED).toHaveLength(51);
  });

  it.each(LISTED)('has $ucum as a unit of $kind', (listed) => {
    expect(measureUnit(listed.ucum)?.kind).toBe(kindOf(listed));
  });

  const convertible = LISTED.filter(
    ({ ucumBase }) => ucumBase !== null && measureUnit(ucumBase) !== undefined,
  );
  it('have a base that is a unit of ours too, but for four that nobody measures in', () => {
    const bases = LISTED.flatMap(({ ucumBase }) => ucumBase ?? []);
    const others = bases.filter((base) => measureUnit(base) === undefined);
    expect([...new Set(others)].sort()).toStrictEqual(['m3', 'm3/s', 'mm2', 'rad']);
  });

  it.each(convertible)('turns one $ucum into $factorToBase $ucumBase', ({ ucum, ucumBase, factorToBase }) => {
    const ours = converted('1', ucum, ucumBase ?? '');
    if (ours === undefined) throw new Error(`No conversion from ${ucum} to ${ucumBase ?? 'nothing'}`);
    expectClose(asNumber(ours), factorToBase ?? NaN);
  });
});

/** Quantities of building that UCUM has no units for. */
const OWN: ReadonlySet<string> = new Set(['permeance', 'transmittance']);

/** Every pair of units of one kind that UCUM converts too. `[perm_us]` is our own, and dB is a level of its own. */
const PAIRS = measureUnits().flatMap((from) =>
  measureUnits()
    .filter((to) => to.kind === from.kind && to.code !== from.code && !OWN.has(from.kind))
    .map((to) => [from.code, to.code] as const),
);

describe('conversions as @lhncbc/ucum-lhc makes them', () => {
  it.each(PAIRS)('agree from %s to %s', (from, to) => {
    for (const value of ['1', '7.25', '-3']) {
      const oracle = UCUM.convertUnitTo(from, Number(value), to);
      const ours = converted(value, from, to);
      expect(oracle.status).toBe('succeeded');
      if (ours === undefined) throw new Error(`No conversion from ${from} to ${to}`);
      expectClose(asNumber(ours), oracle.toVal ?? NaN);
    }
  });

  it.each(measureUnits().filter(({ kind }) => !OWN.has(kind)))('knows the code $code', ({ code }) => {
    expect(UCUM.validateUnitString(code).status).toBe('valid');
  });

  it('gives 25.400000000000002 mm for an inch, which is why it is not the judge', () => {
    expect(UCUM.convertUnitTo('[in_i]', 1, 'mm').toVal).toBe(25.400000000000002);
    expect(converted('1', '[in_i]', 'mm')).toStrictEqual({ num: 127n, den: 5n });
  });

  it.each([
    ['[perm_us]', 'permeance'],
    ['[uo_us]', 'transmittance'],
  ])('does not know our own unit %s of %s', (code, kind) => {
    expect(UCUM.validateUnitString(code).status).not.toBe('valid');
    expect(measureUnit(code)?.kind).toBe(kind);
  });
});
