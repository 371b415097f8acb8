import { judgeWork, placesToLookAt } from '@libs/judge';
import fc from 'fast-check';
import { entryOf, nothingDone, operation, planOfOperations, value } from '../support/judging';

const PLACES = ['road', 'curb', 'front', 'rear', 'mate', 'inside', 'kitchen', 'bath-1'];
const asked = { characteristic: 'nails-above', worstOf: 5, places: PLACES };

describe('places to count at, drawn by lot', () => {
  it('are the same for a serial whoever asks, and as often as he asks', () => {
    expect(placesToLookAt('T-100A', 'floor-strapped', asked)).toStrictEqual(
      placesToLookAt('T-100A', 'floor-strapped', asked),
    );
  });

  it('are so many different ones of those there are', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), fc.integer({ min: 2, max: 8 }), (serial, id, worstOf) => {
        const drawn = placesToLookAt(serial, id, { ...asked, worstOf }).map(({ place }) => place);
        expect(new Set(drawn).size).toBe(worstOf);
        expect(PLACES).toStrictEqual(expect.arrayContaining(drawn));
      }),
    );
  });

  it('are each drawn about as often as the others, so that no place is safe', () => {
    const times = new Map(PLACES.map((place) => [place, 0]));
    for (let serial = 0; serial < 4_000; serial += 1) {
      for (const { place } of placesToLookAt(`T-${serial}A`, 'floor-strapped', asked)) {
        times.set(place, (times.get(place) ?? 0) + 1);
      }
    }
    // 4000 draws of 5 from 8: 2500 each, standard deviation 31.
    for (const count of times.values()) expect(Math.abs(count - 2_500)).toBeLessThan(5 * 31);
  });

  it('are looked at in more than one spot where there are fewer places than counts', () => {
    const few = placesToLookAt('T-100A', 'floor-strapped', { ...asked, places: ['road', 'curb'] });
    expect(few.map(({ spots }) => spots)).toStrictEqual([3, 2]);
  });

  it('are none where one reading is asked for, or no places are named', () => {
    expect(placesToLookAt('T-100A', 'x', { ...asked, worstOf: 1 })).toStrictEqual([]);
    expect(placesToLookAt('T-100A', 'x', { ...asked, places: [] })).toStrictEqual([]);
  });
});

describe('a reading asked for at each of several places (each nail line, each wall)', () => {
  const plan = planOfOperations(
    operation('decked', { values: [value('spacing', { places: ['road', 'curb', 'front'] })] }),
  );
  const at = (...places: readonly (string | undefined)[]) =>
    places.map((place) => ({
      characteristic: 'spacing',
      value: '2',
      unit: '[in_i]',
      ...(place === undefined ? {} : { place }),
    }));
  const told = (...places: readonly (string | undefined)[]) =>
    judgeWork(plan, nothingDone, entryOf('decked', { values: at(...places) }));

  it('is missed at each place that has none', () => {
    expect(told('road')).toMatchObject([{ rule: 'value-missing', places: ['curb', 'front'] }]);
    expect(told('road', 'curb', 'front')).toStrictEqual([]);
    expect(told(undefined)).toMatchObject([{ rule: 'value-missing', places: ['road', 'curb', 'front'] }]);
  });

  it('is not missed where the work itself is still to be done', () => {
    const values = at('road', 'front');
    expect(judgeWork(plan, nothingDone, entryOf('decked', { values, except: ['curb'] }))).toStrictEqual([]);
  });

  it('is judged at each: the worst is told, with its place', () => {
    const values = [
      ...at('road', 'curb'),
      { characteristic: 'spacing', value: '1', unit: '[in_i]', place: 'front' },
    ];
    expect(judgeWork(plan, nothingDone, entryOf('decked', { values }))).toMatchObject([
      { rule: 'value-out-of-limits', recorded: '1', places: ['front'] },
    ]);
  });
});
