import { coveredBy, judgeAsking, judgeWork, transitivelyHidden } from '@libs/judge';
import {
  defect,
  done,
  entryOf,
  hides,
  hold,
  nothingDone,
  operation,
  planOfOperations,
  requires,
  SOURCE,
  stateOf,
  value,
} from '../support/judging';

const wired = operation('wired', { values: [value('edge'), value('tidy', { grade: 'note' })] });
const inspected = operation('inspected', { entry: 'I', crew: 'quality', requires: requires('wired') });
const drywalled = operation('drywalled', {
  station: 'drywall',
  crew: 'drywall',
  requires: requires('inspected'),
  hides: [hides('wired')],
});
const taped = operation('taped', { station: 'drywall', hides: [hides('drywalled', { grade: 'note' })] });
const plan = planOfOperations(wired, inspected, drywalled, taped);

const asked = (work: Parameters<typeof stateOf>[0], except: readonly string[] = []) =>
  judgeAsking(plan, stateOf(work), { operation: 'drywalled', except });

describe('asking to cover', () => {
  it('is refused while what it hides is not on record, charged to the missing work and its station', () => {
    expect(asked({ inspected: done() })).toStrictEqual([
      {
        rule: 'cover-hides-unproven',
        grade: 'refuse',
        class: 'record',
        operation: 'wired',
        station: 'rough-in',
        entry: 'drywalled',
        source: SOURCE,
      },
    ]);
  });

  it('is refused while what it requires besides is not on record', () => {
    expect(asked({ wired: done() })).toMatchObject([
      { rule: 'required-work-unproven', grade: 'refuse', operation: 'inspected', entry: 'drywalled' },
    ]);
  });

  it('says what is both hidden and required once, as hidden', () => {
    const both = planOfOperations(wired, { ...drywalled, requires: requires('wired') });
    expect(judgeAsking(both, nothingDone, { operation: 'drywalled', except: [] })).toMatchObject([
      { rule: 'cover-hides-unproven', operation: 'wired' },
    ]);
    const lifted = { ...drywalled, requires: requires('wired'), hides: [hides('wired', { hidden: 'lift' })] };
    expect(
      judgeAsking(planOfOperations(wired, lifted), nothingDone, { operation: 'drywalled', except: [] }),
    ).toMatchObject([
      { rule: 'cover-hides-unproven', grade: 'note' },
      { rule: 'required-work-unproven', grade: 'refuse' },
    ]);
  });

  it('is cleared without a word once all is proven', () => {
    expect(asked({ wired: done(), inspected: done() })).toStrictEqual([]);
  });

  it('is refused for hidden work recorded without a value that holds, naming the value', () => {
    expect(asked({ wired: done({ missing: ['edge', 'tidy'] }), inspected: done() })).toMatchObject([
      { rule: 'cover-hides-unproven', operation: 'wired', characteristic: 'edge', required: '>= 1.25' },
    ]);
  });

  it('is cleared over a missing value that is only a note', () => {
    expect(asked({ wired: done({ missing: ['tidy'] }), inspected: done() })).toStrictEqual([]);
  });

  it('is refused for an operation that is not in the plan', () => {
    expect(judgeAsking(plan, nothingDone, { operation: 'sided', except: [] })).toMatchObject([
      { rule: 'operation-not-planned', grade: 'refuse', operation: 'sided', station: null },
    ]);
  });

  it('is never refused for order by a rulebook made from a log', () => {
    expect(
      judgeAsking({ ...plan, enforced: false }, nothingDone, { operation: 'drywalled', except: [] }),
    ).toStrictEqual([]);
  });
});

describe('places', () => {
  const openInKitchen = { wired: done({ except: ['kitchen', 'bath-1'] }), inspected: done() };

  it('that are open block a cover there, and are named', () => {
    expect(asked(openInKitchen)).toMatchObject([
      { rule: 'cover-hides-unproven', operation: 'wired', places: ['kitchen', 'bath-1'] },
    ]);
  });

  it('that the cover leaves out as well do not block it', () => {
    expect(asked(openInKitchen, ['kitchen'])).toMatchObject([{ places: ['bath-1'] }]);
    expect(asked(openInKitchen, ['bath-1', 'kitchen'])).toStrictEqual([]);
  });

  it('excuse nothing where the work is not on record at all', () => {
    expect(asked({ inspected: done() }, ['kitchen'])).toMatchObject([{ rule: 'cover-hides-unproven' }]);
  });
});

describe('how a thing is hidden', () => {
  const insulated = operation('insulated', { hides: [hides('wired', { hidden: 'lift', grade: 'refuse' })] });
  const wrapped = operation('wrapped', { station: 'drywall' });
  const boarded = operation('boarded', {
    station: 'drywall',
    hides: [hides('wired', { hidden: 'second', otherFace: ['wrapped'] })],
  });
  const faces = planOfOperations(wired, insulated, wrapped, boarded);
  const ask = (id: string, work: Parameters<typeof stateOf>[0]) =>
    judgeAsking(faces, stateOf(work), { operation: id, except: [] });

  it('what can be lifted by hand is never more than a note', () => {
    expect(ask('insulated', {})).toMatchObject([{ rule: 'cover-hides-unproven', grade: 'note' }]);
  });

  it('the first of two faces hides nothing, the second does, whichever it is', () => {
    expect(ask('boarded', {})).toStrictEqual([]);
    expect(ask('wrapped', {})).toStrictEqual([]);
    expect(ask('boarded', { wrapped: done() })).toMatchObject([{ operation: 'wired', entry: 'boarded' }]);
    expect(ask('wrapped', { boarded: done() })).toMatchObject([{ operation: 'wired', entry: 'wrapped' }]);
  });

  it('a face still open at a place leaves that place in sight', () => {
    const work = { wired: done({ except: ['kitchen'] }) };
    expect(ask('boarded', { ...work, wrapped: done({ except: ['kitchen'] }) })).toStrictEqual([]);
    expect(ask('wrapped', { ...work, boarded: done({ except: ['kitchen'] }) })).toStrictEqual([]);
    expect(ask('wrapped', { ...work, boarded: done() })).toMatchObject([{ places: ['kitchen'] }]);
  });

  it('with no other face in the plan, the cover alone hides', () => {
    const alone = planOfOperations(wired, { ...boarded, hides: [hides('wired', { hidden: 'second' })] });
    expect(judgeAsking(alone, nothingDone, { operation: 'boarded', except: [] })).toHaveLength(1);
  });

  it('a cover graded as a note stays one', () => {
    expect(judgeAsking(plan, nothingDone, { operation: 'taped', except: [] })).toMatchObject([
      { operation: 'drywalled', grade: 'note' },
    ]);
  });
});

describe('defects and holds behind a cover', () => {
  const work = { wired: done(), inspected: done() };
  const withOpen = (open: Parameters<typeof stateOf>[1], except: readonly string[] = []) =>
    judgeAsking(plan, stateOf(work, open), { operation: 'drywalled', except });

  it('an open nonconformance on hidden work refuses the cover', () => {
    expect(withOpen({ defects: [defect()] })).toMatchObject([
      {
        rule: 'cover-hides-defect',
        grade: 'refuse',
        class: 'nonconformance',
        operation: 'wired',
        recorded: 'branch-wire pierced',
        defect: 'd-1',
      },
    ]);
  });

  it('rework not verified yet is still an open nonconformance', () => {
    expect(withOpen({ defects: [defect({ state: 'reworked' })] })).toHaveLength(1);
  });

  it('punch and shortages do not refuse it', () => {
    expect(withOpen({ defects: [defect({ class: 'punch' }), defect({ class: 'shortage' })] })).toStrictEqual(
      [],
    );
  });

  it('a defect at a place the cover leaves out does not refuse it', () => {
    const defects = [defect({ place: 'kitchen' })];
    expect(withOpen({ defects }, ['kitchen'])).toStrictEqual([]);
    expect(withOpen({ defects })).toHaveLength(1);
  });

  it('a hold on hidden work refuses it; one on work elsewhere does not', () => {
    expect(withOpen({ holds: [hold()] })).toMatchObject([{ rule: 'held', grade: 'refuse', hold: 'h-1' }]);
    expect(withOpen({ holds: [hold({ operation: 'roofed' })] })).toStrictEqual([]);
    expect(withOpen({ holds: [hold({ operation: null })] })).toStrictEqual([]);
  });

  it('a hold that hangs on a defect is said once, as the defect', () => {
    expect(withOpen({ defects: [defect()], holds: [hold({ defect: 'd-1' })] })).toMatchObject([
      { rule: 'cover-hides-defect' },
    ]);
  });

  it('a hold on the inspection a cover requires refuses it', () => {
    expect(withOpen({ holds: [hold({ operation: 'inspected' })] })).toMatchObject([
      { rule: 'held', grade: 'refuse' },
    ]);
  });

  it('a hold deeper down counts with the grade of the first cover over it', () => {
    const state = stateOf({ ...work, drywalled: done() }, { holds: [hold()] });
    expect(judgeAsking(plan, state, { operation: 'taped', except: [] })).toMatchObject([
      { rule: 'held', grade: 'note' },
    ]);
  });

  it('all that lies behind a cover is known', () => {
    expect([...transitivelyHidden(plan, 'taped')].sort()).toStrictEqual(['drywalled', 'inspected', 'wired']);
  });
});

describe('telling that it is covered', () => {
  it('says the same of unproven work, and it counts as the record that is short', () => {
    expect(judgeWork(plan, stateOf({ inspected: done() }), entryOf('drywalled'))).toMatchObject([
      {
        rule: 'cover-hides-unproven',
        grade: 'refuse',
        class: 'record',
        operation: 'wired',
        station: 'rough-in',
      },
    ]);
  });

  it('over an open defect is a nonconformance of its own', () => {
    const state = stateOf({ wired: done(), inspected: done() }, { defects: [defect()] });
    expect(judgeWork(plan, state, entryOf('drywalled'))).toMatchObject([
      { rule: 'cover-hides-defect', grade: 'refuse', class: 'nonconformance' },
    ]);
  });

  it('over a hold only notes it, because the hold stays open by itself', () => {
    const state = stateOf({ wired: done(), inspected: done() }, { holds: [hold()] });
    expect(judgeWork(plan, state, entryOf('drywalled'))).toMatchObject([{ rule: 'held', grade: 'note' }]);
  });

  it('takes what is behind it from sight, tape on a board nobody recorded included', () => {
    expect(coveredBy(plan, stateOf({ drywalled: done() }), 'wired')).toStrictEqual(['drywalled']);
    expect(coveredBy(plan, stateOf({ taped: done() }), 'wired')).toStrictEqual(['taped']);
    expect(coveredBy(plan, nothingDone, 'wired')).toStrictEqual([]);
  });
});
