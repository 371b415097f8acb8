import { exposureOf } from '@libs/tracing';
import type { Cause } from '@libs/tracing';
import { smallPlant } from './small-plant';
import type { SmallHome } from './small-plant';

const lot = (value: string): Cause => ({
  operation: 'floor-strapped',
  station: 'wall-set',
  outside: null,
  factor: 'lot',
  value,
});
const unrecorded: SmallHome = { crew: null, lot: null, marks: ['missing'] };
const from = (name: string): SmallHome => ({ crew: 'A', lot: name });

describe('the homes that share a cause', () => {
  const homes = [from('L1'), unrecorded, from('L1'), unrecorded, from('L2')];

  it('are known by the record, by the rows around a missing one, or cannot be excluded', () => {
    expect(exposureOf(lot('L1'), smallPlant(homes)).map(({ home, reason }) => [home, reason])).toStrictEqual([
      ['H0', 'recorded'],
      ['H1', 'rows-around-agree'],
      ['H2', 'recorded'],
      ['H3', 'cannot-be-excluded'],
    ]);
  });

  it('leave out whom only the whole group has, where they are to be known exactly', () => {
    expect(exposureOf(lot('L1'), smallPlant(homes), 'exact').map(({ home }) => home)).toStrictEqual([
      'H0',
      'H1',
      'H2',
    ]);
  });

  it('of a stretch of time are those built in it, and those it may have reached', () => {
    const cause: Cause = {
      ...lot(''),
      factor: 'window',
      value: '2025-01-02..2025-01-03',
      widest: '2025-01-01..2025-01-03',
    };

    expect(exposureOf(cause, smallPlant(homes)).map(({ home, reason }) => [home, reason])).toStrictEqual([
      ['H0', 'cannot-be-excluded'],
      ['H1', 'recorded'],
      ['H2', 'recorded'],
    ]);
  });

  it('of an operation perhaps never done are those without a record of it', () => {
    const cause: Cause = { ...lot(''), factor: 'unrecorded', value: null };

    expect(exposureOf(cause, smallPlant(homes)).map(({ home }) => home)).toStrictEqual(['H1', 'H3']);
  });
});
