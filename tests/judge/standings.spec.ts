import { carriedOpen, openAt, standings } from '@libs/judge';
import {
  done,
  hides,
  hold,
  nothingDone,
  operation,
  planOfOperations,
  requires,
  stateOf,
  value,
} from '../support/judging';

const plan = planOfOperations(
  operation('floored', { station: 'floor' }),
  operation('wired', { station: 'rough-in', requires: requires('floored'), values: [value('edge')] }),
  operation('trussed', { station: 'roof-shop' }),
  operation('roofed', { station: 'roof-set', requires: requires('trussed') }),
  operation('drywalled', { station: 'drywall', hides: [hides('wired')] }),
  operation('braced', { station: 'yard' }),
  operation('anchored', { station: 'site', scope: 'home' }),
);

const at = (station: string | null, state = nothingDone) =>
  Object.fromEntries(standings(plan, state, station).map(({ operation: id, standing }) => [id, standing]));

describe('how operations stand', () => {
  it('nothing is due before the section is on the line', () => {
    expect(new Set(Object.values(at(null)))).toStrictEqual(new Set(['waiting']));
  });

  it('is due once the section has reached the station and nothing hard is in the way', () => {
    expect(at('floor')).toMatchObject({ floored: 'due', wired: 'waiting', trussed: 'waiting' });
    expect(at('rough-in')).toMatchObject({ floored: 'due', wired: 'waiting' });
    expect(at('rough-in', stateOf({ floored: done() }))).toMatchObject({ floored: 'proven', wired: 'due' });
  });

  it('a shop’s work is due where the shop is, and once the station it feeds is reached', () => {
    expect(at('roof-shop')).toMatchObject({ trussed: 'due', floored: 'due', roofed: 'waiting' });
    expect(at('roof-set')).toMatchObject({ trussed: 'due' });
    expect(at('roof-set', stateOf({ trussed: done() }))).toMatchObject({ roofed: 'due' });
  });

  it('yard and site come after the line, in that order', () => {
    expect(at('final')).toMatchObject({ braced: 'waiting', anchored: 'waiting' });
    expect(at('yard')).toMatchObject({ braced: 'due', anchored: 'waiting' });
    expect(at('site')).toMatchObject({ braced: 'due', anchored: 'due' });
  });

  it('says what a cover waits for: what it would refuse to hide', () => {
    const standing = standings(plan, nothingDone, 'drywall').find(({ operation: id }) => id === 'drywalled');
    expect(standing).toStrictEqual({
      operation: 'drywalled',
      standing: 'waiting',
      except: [],
      waitsFor: ['wired'],
    });
  });

  it('is not due over what is not there yet, be that only a note: nobody tapes before the board is up', () => {
    const inside = planOfOperations(
      operation('drywalled', { station: 'drywall' }),
      operation('taped', { station: 'drywall', hides: [hides('drywalled', { grade: 'note' })] }),
    );
    const standing = (state = nothingDone) => standings(inside, state, 'drywall').map((one) => one.standing);
    expect(standing()).toStrictEqual(['due', 'waiting']);
    expect(standing(stateOf({ drywalled: done() }))).toStrictEqual(['proven', 'due']);
  });

  it('tells proven, covered, open at places, held, and recorded without its value', () => {
    const floored = done();
    expect(at('drywall', stateOf({ floored, wired: done() }))).toMatchObject({ wired: 'proven' });
    expect(at('drywall', stateOf({ floored, wired: done(), drywalled: done() }))).toMatchObject({
      wired: 'covered',
    });
    expect(at('drywall', stateOf({ floored, wired: done({ except: ['hall'] }) }))).toMatchObject({
      wired: 'open-at-places',
    });
    expect(at('drywall', stateOf({ floored, wired: done({ missing: ['edge'] }) }))).toMatchObject({
      wired: 'due',
    });
    expect(at('drywall', stateOf({ wired: done() }, { holds: [hold()] }))).toMatchObject({ wired: 'held' });
  });
});

describe('what is still owed', () => {
  const state = stateOf({ floored: done({ except: ['hall'] }), wired: done({ missing: ['edge'] }) });

  it('at a station is what is not proven everywhere', () => {
    expect(openAt(plan, state, 'floor')).toStrictEqual(['floored']);
    expect(openAt(plan, state, 'rough-in')).toStrictEqual(['wired']);
    expect(openAt(plan, stateOf({ floored: done() }), 'floor')).toStrictEqual([]);
  });

  it('is carried along by the section, shops that feed earlier stations included', () => {
    expect(carriedOpen(plan, state, 'roof-set')).toStrictEqual(['floored', 'wired', 'trussed']);
    expect(carriedOpen(plan, state, 'rough-in')).toStrictEqual(['floored']);
    expect(carriedOpen(plan, nothingDone, 'floor')).toStrictEqual([]);
  });
});
