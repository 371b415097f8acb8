import { judgeDestination } from '@libs/rulebook';
import { changed, DESIGN, problemsOf, read, SMALL } from '../support/small-rulebook';

const RISING = changed('plant.yaml', '    en: wind\n', '    en: wind\n    rising: true\n');
const files = (...rows: readonly string[]) => ({
  ...RISING,
  'counties.csv': ['county,wind', ...rows].join('\n'),
});
const said = (wind: string, destination: string | null, ...rows: readonly string[]) =>
  judgeDestination(read(files(...rows)), { ...DESIGN, wind }, destination);

/**
 * 24 CFR 3280.305(c)(2): wind zones are set by county, and a home stands in the zone it is designed for or a lesser
 * one. The counties here are invented.
 */
describe('a home bound for a county', () => {
  it('is held where the county lies in a higher zone than the design', () => {
    expect(said('II', 'Gullmere', 'Gullmere,III')).toMatchObject([
      {
        rule: 'destination-outside-zones',
        grade: 'hold',
        characteristic: 'wind',
        required: 'III',
        recorded: 'II',
        places: ['Gullmere'],
        source: { row: 'counties.csv:2' },
      },
    ]);
  });

  it('is free to go where the zone is the same or lower', () => {
    expect(said('II', 'Gullmere', 'Gullmere,II')).toStrictEqual([]);
    expect(said('III', 'Gullmere', 'Gullmere,I')).toStrictEqual([]);
  });

  it('goes by the row for everywhere else where its own is not listed', () => {
    expect(said('I', 'Farland', 'Gullmere,III', '*,II')).toHaveLength(1);
    expect(said('II', 'Farland', 'Gullmere,III', '*,II')).toStrictEqual([]);
  });

  it('is not spoken of while nobody knows the county, or where the home goes', () => {
    expect(said('I', 'Farland', 'Gullmere,III')).toStrictEqual([]);
    expect(said('I', null, 'Gullmere,III', '*,III')).toStrictEqual([]);
  });

  it('needs an attribute whose values are in order, a value it has, and each county once', () => {
    const unordered = { ...SMALL, 'counties.csv': 'county,wind\nGullmere,I' };
    expect(problemsOf(unordered)).toMatchObject([{ file: 'counties.csv', row: 1, column: 'wind' }]);
    expect(problemsOf(files('Gullmere,IV'))).toMatchObject([
      { file: 'counties.csv', row: 2, column: 'wind' },
    ]);
    expect(problemsOf(files('Gullmere,I', 'Gullmere,II'))).toMatchObject([
      { file: 'counties.csv', row: 3, column: 'county' },
    ]);
  });
});
