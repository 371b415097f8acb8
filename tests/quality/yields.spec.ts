import { firstResultYield, pareto, rolledYield, share } from '@libs/quality';

describe('a rolled yield', () => {
  it('leaves out steps that nothing went through', () => {
    expect(
      rolledYield([
        { count: 1, of: 2 },
        { count: 0, of: 0 },
        { count: 3, of: 4 },
      ]),
    ).toBe(0.375);
  });

  it('is no figure where nothing went through at all', () => {
    expect(rolledYield([])).toBeNull();
    expect(rolledYield([{ count: 0, of: 0 }])).toBeNull();
  });
});

describe('a share', () => {
  it('is no figure where there is nothing to divide by', () => {
    expect(share({ count: 0, of: 0 })).toBeNull();
  });
});

describe('first-pass yield from attempts', () => {
  it('does not count a unit that was never tried', () => {
    expect(firstResultYield([[true], [], [false, true]])).toStrictEqual({ count: 1, of: 2 });
  });
});

describe('what is counted worst first', () => {
  it('leaves what it was given as it was', () => {
    const tallies = [
      { key: 'a', count: 1 },
      { key: 'b', count: 2 },
    ];
    pareto(tallies);
    expect(tallies.map(({ key }) => key)).toStrictEqual(['a', 'b']);
  });
});
