import { firstResultYield, lossShares, pareto, rolledYield, share } from '@libs/quality';

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

describe('where a line loses', () => {
  // By hand: 0.5 is one halving, 0.25 two, and 1 none: a third, two thirds, nothing.
  it('is told in parts of the logarithm, so that the parts make up the whole', () => {
    const shares = lossShares([
      { count: 1, of: 2 },
      { count: 1, of: 4 },
      { count: 3, of: 3 },
      { count: 0, of: 0 },
    ]);
    expect(shares[0]).toBeCloseTo(1 / 3, 12);
    expect(shares[1]).toBeCloseTo(2 / 3, 12);
    expect(shares.slice(2)).toStrictEqual([0, null]);
  });

  it('is not to be told where nothing is lost, or a step loses everything', () => {
    expect(lossShares([{ count: 2, of: 2 }])).toStrictEqual([null]);
    expect(
      lossShares([
        { count: 0, of: 2 },
        { count: 1, of: 2 },
      ]),
    ).toStrictEqual([null, null]);
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
