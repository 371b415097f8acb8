import { parse } from 'csv-parse/sync';
import { csvOf } from '../../apps/web/src/charts/csv';
import { weeksUpTo } from '../../apps/web/src/screens/quality/span';

describe('a table saved as CSV', () => {
  it('is read back cell for cell by another program’s reader (RFC 4180)', () => {
    const rows = [
      ['Station', 'Right first time'],
      ['Roof, jig', '95% · "38" of 40'],
      ['two\nlines', ''],
    ];
    expect(parse(csvOf(rows))).toStrictEqual(rows);
  });

  it('ends each line as RFC 4180 section 2 has it', () => {
    expect(csvOf([['a', 'b']])).toBe('a,b\r\n');
  });
});

describe('a span of weeks', () => {
  it('counts both its ends', () => {
    expect(weeksUpTo('2026-11-20', 4)).toStrictEqual({ from: '2026-10-24', to: '2026-11-20' });
  });
});
