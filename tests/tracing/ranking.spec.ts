import fc from 'fast-check';
import { BELIEFS, causeKey, gatherCounts, trace, traceCounts } from '@libs/tracing';
import type { Candidate, Trace } from '@libs/tracing';
import { smallPlant, twoCrews } from './small-plant';
import type { SmallHome } from './small-plant';

const STRAPS_BY_A = 'floor-strapped/crew/A';
const ofCrewA = twoCrews((at) => at % 10 === 0);

const find = ({ candidates }: Trace, key: string): Candidate => {
  const found = candidates.find((candidate) => candidate.key === key);
  if (found === undefined) throw new Error(`${key} is no candidate`);
  return found;
};

describe('tracing claims to their cause', () => {
  it('puts first the crew whose homes are claimed again and again', () => {
    const { candidates, verdict } = trace(smallPlant(ofCrewA));

    expect(candidates[0]).toMatchObject({ rank: 1, key: STRAPS_BY_A });
    expect(verdict).not.toBe('no-common-cause');
  });

  it('says what speaks against a cause as well: like homes without a complaint', () => {
    const { evidence } = find(trace(smallPlant(ofCrewA)), STRAPS_BY_A);

    expect(evidence).toContainEqual({ kind: 'without-complaint', speaks: 'against', count: 32, of: 40 });
    expect(evidence).toContainEqual(
      expect.objectContaining({
        kind: 'association',
        speaks: 'for',
        exposed: { count: 8, of: 40 },
        others: { count: 0, of: 40 },
      }),
    );
  });

  it('says that two causes with the very same homes are tied', () => {
    const homes = ofCrewA.map((home) => ({ ...home, installer: home.crew === 'A' ? 'near' : 'far' }));
    const crew = find(trace(smallPlant(homes)), STRAPS_BY_A);
    const installer = find(trace(smallPlant(homes)), 'x-set/installer/near');

    expect(crew.tiedWith).toContain('x-set/installer/near');
    expect(installer).toMatchObject({ rank: crew.rank, confidence: crew.confidence });
  });

  it('tells such a tie apart once reports do', () => {
    const homes = ofCrewA.map((home) => ({
      ...home,
      installer: home.crew === 'A' ? 'near' : 'far',
      asFound: 'floor-strapped',
    }));
    const { candidates } = trace(smallPlant(homes));

    expect(candidates[0]).toMatchObject({ key: STRAPS_BY_A });
    expect(find(trace(smallPlant(homes)), 'x-set/installer/near').rank).toBeGreaterThan(1);
  });

  it('asks for a report where the first two causes have different sources', () => {
    const homes = ofCrewA.map((home) => ({ ...home, installer: home.crew === 'A' ? 'near' : 'far' }));

    expect(trace(smallPlant(homes)).next).toMatchObject({ kind: 'ask-as-found' });
  });

  it('finds no common cause in claims that fall on all alike', () => {
    const { candidates, verdict } = trace(smallPlant(twoCrews((at) => at % 20 === 3 || at % 20 === 12)));

    expect(verdict).not.toBe('common-cause');
    expect(candidates[0]?.confidence).toBeLessThan(0.5);
  });

  it('weighs a missing record by the station’s own habit', () => {
    const missingAt = (isMissing: (at: number) => boolean): readonly SmallHome[] =>
      twoCrews((at) => at % 10 === 0).map((home, at) =>
        isMissing(at) ? { ...home, crew: null, lot: null, marks: ['missing'] } : home,
      );
    const rare = trace(smallPlant(missingAt((at) => at % 10 === 0)));
    const usual = trace(smallPlant(missingAt((at) => at % 2 === 0)));

    expect(find(rare, 'floor-strapped/unrecorded').confidence).toBeGreaterThan(
      find(usual, 'floor-strapped/unrecorded').confidence,
    );
  });

  it('thinks no worse of work because its record was corrected', () => {
    const corrected = ofCrewA.map((home): SmallHome =>
      home.claimed === true ? { ...home, marks: ['corrected'] } : home,
    );

    expect(find(trace(smallPlant(corrected)), STRAPS_BY_A).confidence).toBeCloseTo(
      find(trace(smallPlant(ofCrewA)), STRAPS_BY_A).confidence,
      10,
    );
  });

  it('names claims of homes it does not know, and does not count them', () => {
    const input = smallPlant(ofCrewA);
    const [claim] = input.claims;
    const stray = { ...claim!, claim: 'stray', home: 'nobody’s' };

    const answer = trace({ ...input, claims: [...input.claims, stray] });
    expect(answer.unplaced).toStrictEqual(['stray']);
    expect(answer.units.claimed).toBe(8);
  });

  it('answers the same from counts as from rows', () => {
    const input = smallPlant(ofCrewA);
    const counts = gatherCounts(input, BELIEFS.halfOfClaimsDays);

    expect(traceCounts(counts, { ...input, claims: 8, unplaced: [], found: [] })).toStrictEqual(trace(input));
  });

  it('gives every cause a key of its own', () => {
    const { candidates } = trace(smallPlant(ofCrewA));

    expect(new Set(candidates.map(({ cause }) => causeKey(cause))).size).toBe(candidates.length);
  });
});

describe('what is so of every small plant', () => {
  const anyHome = fc.record({
    crew: fc.constantFrom('A', 'B', 'C', null),
    lot: fc.constantFrom('L1', 'L2', null),
    claimed: fc.boolean(),
  });
  const anyPlant = fc.array(anyHome, { minLength: 4, maxLength: 40 });

  it('does not depend on the order of the rows', () => {
    fc.assert(
      fc.property(anyPlant, (homes) => {
        const input = smallPlant(homes);
        const turned = { ...input, homes: [...input.homes].reverse(), claims: [...input.claims].reverse() };

        expect(trace(turned).candidates.map(({ key }) => key)).toStrictEqual(
          trace(input).candidates.map(({ key }) => key),
        );
      }),
      { numRuns: 40 },
    );
  });

  it('holds confidences that are shares, with no more than the whole together', () => {
    fc.assert(
      fc.property(anyPlant, (homes) => {
        const { candidates, noCommonCause } = trace(smallPlant(homes));
        const byRank = new Map(candidates.map(({ rank, confidence }) => [rank, confidence]));
        const total = [...byRank.values()].reduce((sum, share) => sum + share, noCommonCause);

        for (const share of byRank.values()) expect(share).toBeGreaterThanOrEqual(0);
        expect(total).toBeLessThanOrEqual(1 + 1e-9);
      }),
      { numRuns: 40 },
    );
  });

  it('suspects a crew less for every like home of its own without a complaint', () => {
    const more = (extra: number): number => {
      const homes = Array.from({ length: extra }, () => ({ crew: 'A', lot: null, claimed: false }));
      return find(trace(smallPlant([...ofCrewA, ...homes])), STRAPS_BY_A).confidence;
    };

    expect(more(40)).toBeLessThan(more(0));
  });
});
