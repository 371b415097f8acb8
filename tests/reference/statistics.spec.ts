import { join } from 'node:path';
import { readCases } from './runner/case-file';
import type { Case } from './runner/case-file';
import { runCase } from './runner/run-case';

/**
 * Every published or recomputed case: computed figures at relative 1e-9, printed ones at half a unit of their last place.
 * CASES_DIR names another folder of files of the same form.
 */
const ours = readCases(join(__dirname, 'cases'));
const given = process.env['CASES_DIR'];
const cases = given === undefined ? ours : readCases(given);

describe('the statistics against published examples', () => {
  it.each(cases.map((one) => [`${one.id}: ${one.title} (${one.source})`, one] as const))('%s', (_, one) => {
    const { failures, notCompared } = runCase(one, [...cases, ...ours]);
    expect(failures).toStrictEqual([]);
    // In our own files every figure is compared; what a file from elsewhere adds is named by npm run reference.
    if (given === undefined) expect(notCompared).toStrictEqual([]);
  });
});

describe('the comparison itself', () => {
  const numbersIn = (value: unknown): number =>
    typeof value === 'number'
      ? 1
      : typeof value === 'object' && value !== null
        ? Object.values(value).reduce<number>((sum, each) => sum + numbersIn(each), 0)
        : 0;
  /** The same, its numbers a hundred-thousandth larger; 0 becomes 1. */
  const bent = (value: unknown): unknown => {
    if (typeof value === 'number') return value === 0 ? 1 : value * 1.00001;
    if (Array.isArray(value)) return value.map(bent);
    return typeof value === 'object' && value !== null
      ? Object.fromEntries(Object.entries(value).map(([key, each]) => [key, bent(each)]))
      : value;
  };

  it('fails every case whose computed figures are a hundred-thousandth off', () => {
    const wrong = ours.filter((one) => numbersIn(one.computed) > 0);
    expect(wrong.length).toBeGreaterThan(70);
    for (const one of wrong) {
      const computed: Case['computed'] = Object(bent(one.computed));
      expect([one.id, runCase({ ...one, computed }, ours).failures.length > 0]).toStrictEqual([one.id, true]);
    }
  });

  it('names a case that no method reads as failed, with the reason', () => {
    const odd = {
      file: 'x',
      id: 'x.1',
      title: '',
      source: '',
      input: { moons: 2 },
      published: {},
      computed: {},
      notes: [],
    };
    expect(runCase(odd, []).failures).toStrictEqual(['no method here reads a case like this (x)']);
  });

  it('fails a case of which nothing could be compared', () => {
    const [one] = ours;
    const failures = one && runCase({ ...one, computed: { moons: 2 }, published: {} }, ours).failures;
    expect(failures?.[0]).toMatch(/gives none of: moons/);
  });
});
