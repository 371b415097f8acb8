import { judgeWork } from '@libs/judge';
import {
  done,
  entryOf,
  hides,
  operation,
  planOfOperations,
  requires,
  stateOf,
  value,
} from '../support/judging';

const wired = operation('wired', { values: [value('edge')] });
const drywalled = operation('drywalled', { station: 'drywall', hides: [hides('wired')] });
const taped = operation('taped', { station: 'drywall', hides: [hides('drywalled', { grade: 'note' })] });
const insulated = operation('insulated', { hides: [hides('wired', { hidden: 'lift' })] });
const plan = planOfOperations(wired, drywalled, taped, insulated);

const edge = { characteristic: 'edge', value: '1.5', unit: '[in_i]' };
const tell = (work: Parameters<typeof stateOf>[0], change: Parameters<typeof entryOf>[1] = {}) =>
  judgeWork(plan, stateOf(work), entryOf('wired', { values: [edge], ...change }));
const inspector = { actor: 'p-inspector', crew: 'quality', roles: ['inspector'] };
const manager = { actor: 'p-manager', crew: 'quality', roles: ['quality-manager'] };

describe('work recorded after its cover', () => {
  it('is held: nobody could see it any more', () => {
    expect(tell({ drywalled: done() })).toMatchObject([
      {
        rule: 'recorded-under-cover',
        grade: 'hold',
        class: 'record',
        operation: 'wired',
        recorded: 'drywalled',
      },
    ]);
  });

  it('is held under tape too, when the board under it was never recorded', () => {
    expect(tell({ taped: done() })).toMatchObject([{ rule: 'recorded-under-cover', recorded: 'taped' }]);
  });

  it('is only noted where the cover itself is only a note', () => {
    const board = judgeWork(plan, stateOf({ taped: done() }), entryOf('drywalled'));
    expect(board.filter(({ rule }) => rule === 'recorded-under-cover')).toMatchObject([{ grade: 'note' }]);
  });

  it('is no matter under what can be lifted by hand', () => {
    expect(tell({ insulated: done() })).toStrictEqual([]);
  });

  it('is held as well when only its missing value comes late', () => {
    expect(tell({ wired: done({ missing: ['edge'] }), drywalled: done() })).toMatchObject([
      { rule: 'recorded-under-cover' },
    ]);
  });

  it('is no matter where work proven in time has a value put right', () => {
    expect(tell({ wired: done(), drywalled: done() })).toStrictEqual([]);
  });

  it('is held where it finishes a place that the board has closed, not where the board is open', () => {
    const work = { wired: done({ except: ['kitchen'] }) };
    expect(tell({ ...work, drywalled: done() })).toMatchObject([{ rule: 'recorded-under-cover' }]);
    expect(tell({ ...work, drywalled: done({ except: ['kitchen'] }) })).toStrictEqual([]);
    expect(tell({ ...work, drywalled: done() }, { except: ['kitchen'] })).toStrictEqual([]);
  });

  it('cannot be seen any more by anyone', () => {
    const seen = tell({ drywalled: done() }, { proof: 'seen', signer: inspector, photos: ['f'] });
    expect(seen).toMatchObject([{ rule: 'seen-after-cover', grade: 'hold', recorded: 'drywalled' }]);
  });

  it('can be reconstructed by the quality manager, and by nobody else', () => {
    expect(tell({ drywalled: done() }, { proof: 'reconstructed', signer: manager })).toStrictEqual([]);
    expect(tell({ drywalled: done() }, { proof: 'reconstructed', signer: inspector })).toMatchObject([
      { rule: 'signer-not-qualified', grade: 'hold', required: 'role:quality-manager' },
    ]);
  });
});

describe('work seen before its cover', () => {
  it('is as good as signed, with a photo, by someone qualified who is not of the crew', () => {
    expect(tell({}, { proof: 'seen', signer: inspector, photos: ['f'] })).toStrictEqual([]);
  });

  it('is held without its photo', () => {
    expect(tell({}, { proof: 'seen', signer: inspector })).toMatchObject([
      { rule: 'photo-missing', grade: 'hold' },
    ]);
  });

  it('is held when someone of the crew vouches for it', () => {
    const own = { ...inspector, crew: 'electrical' };
    expect(tell({}, { proof: 'seen', signer: own, photos: ['f'] })).toMatchObject([
      { rule: 'signed-by-own-crew', grade: 'hold' },
    ]);
  });

  it('is held when nobody qualified does', () => {
    const lead = { actor: 'p-lead', crew: 'drywall', roles: ['station-lead'] };
    expect(tell({}, { proof: 'seen', signer: lead, photos: ['f'] })).toMatchObject([
      { rule: 'signer-not-qualified', required: 'role:inspector role:quality-manager' },
    ]);
  });
});

describe('an inspection before a cover, told after it', () => {
  const looked = operation('looked', {
    crew: 'quality',
    entry: 'I',
    requires: requires('wired'),
    signers: ['crew:quality'],
  });
  const boarded = operation('boarded', { requires: requires('looked'), hides: [hides('wired')] });
  const finished = operation('finished', {
    entry: 'I',
    crew: 'quality',
    requires: requires('wired', 'boarded'),
  });
  const line = planOfOperations(wired, looked, boarded, finished);
  const late = (id: string, change: Parameters<typeof entryOf>[1] = {}) =>
    judgeWork(
      line,
      stateOf({ wired: done(), boarded: done({ crew: 'drywall' }) }),
      entryOf(id, { signer: inspector, ...change }),
    );

  it('is held: what it was to look at is out of sight', () => {
    expect(late('looked')).toMatchObject([
      { rule: 'recorded-under-cover', grade: 'hold', operation: 'looked', recorded: 'boarded' },
    ]);
  });

  it('is sound where the quality manager has had it opened up', () => {
    expect(late('looked', { proof: 'reconstructed', signer: manager })).toStrictEqual([]);
  });

  it('is no matter for one of what is in sight at the end', () => {
    expect(late('finished')).toStrictEqual([]);
  });
});
