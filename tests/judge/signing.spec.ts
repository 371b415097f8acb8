import type { Entry } from '@libs/judge';
import { judgeWork } from '@libs/judge';
import { done, entryOf, operation, planOfOperations, requires, stateOf } from '../support/judging';

const wired = operation('wired');
const plated = operation('plated', { crew: 'quality' });
const inspected = operation('inspected', {
  crew: 'quality',
  entry: 'I',
  requires: requires('wired', 'plated'),
  signers: ['crew:quality', 'role:quality-manager'],
});
const plan = planOfOperations(wired, plated, inspected);
const work = { wired: done(), plated: done({ crew: 'quality', actor: 'p-inspector' }) };

const signedBy = (signer: Entry['signer'], state = stateOf(work)) =>
  judgeWork(plan, state, entryOf('inspected', { signer }));

describe('an inspection', () => {
  it('is signed by the crew or the role the rulebook names', () => {
    expect(signedBy({ actor: 'p-9', crew: 'quality', roles: [] })).toStrictEqual([]);
    expect(signedBy({ actor: 'p-9', crew: null, roles: ['quality-manager'] })).toStrictEqual([]);
  });

  it('is held when someone else signs it', () => {
    expect(signedBy({ actor: 'p-9', crew: 'drywall', roles: ['station-lead'] })).toMatchObject([
      {
        rule: 'signer-not-qualified',
        grade: 'hold',
        class: 'record',
        operation: 'inspected',
        required: 'crew:quality role:quality-manager',
        recorded: 'crew:drywall role:station-lead',
      },
    ]);
  });

  it('is held when whoever did the work signs it, in whatever capacity', () => {
    expect(signedBy({ actor: 'p-crew', crew: 'quality', roles: [] })).toMatchObject([
      { rule: 'signed-by-own-crew', grade: 'hold', operation: 'inspected', required: 'wired' },
    ]);
  });

  it('is held when the crew that did the work signs it, planned or not', () => {
    const byQuality = stateOf({ ...work, wired: done({ crew: 'quality' }) });
    expect(signedBy({ actor: 'p-9', crew: 'quality', roles: [] }, byQuality)).toMatchObject([
      { rule: 'signed-by-own-crew', required: 'wired' },
    ]);
  });

  it('may be signed by whoever did what is the inspecting crew’s own to do', () => {
    expect(signedBy({ actor: 'p-inspector', crew: 'quality', roles: [] })).toStrictEqual([]);
  });
});

describe('crew work', () => {
  it('may be signed by anyone who may record, where the rulebook names nobody', () => {
    const stranger = { actor: 'p-1', crew: null, roles: [] };
    expect(judgeWork(plan, stateOf({}), entryOf('wired', { signer: stranger }))).toStrictEqual([]);
  });
});
