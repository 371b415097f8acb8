import { judgeAsking, judgeWork } from '@libs/judge';
import {
  defect,
  done,
  entryOf,
  hides,
  hold,
  operation,
  planOfOperations,
  requires,
  stateOf,
} from '../support/judging';

const wired = operation('wired');
const tested = operation('tested', { entry: 'T', requires: requires('wired') });
const finished = operation('finished', { station: 'final', gate: true });
const labelled = operation('labelled', { station: 'final', gate: true, label: true });
const plan = planOfOperations(wired, tested, finished, labelled);

type Open = Parameters<typeof stateOf>[1];
const ask = (id: string, open: Open) =>
  judgeAsking(plan, stateOf({ wired: done() }, open), { operation: id, except: [] });
const tell = (id: string, open: Open) => judgeWork(plan, stateOf({ wired: done() }, open), entryOf(id));

describe('a gate', () => {
  it('is refused while any hold is open, wherever it is', () => {
    expect(ask('finished', { holds: [hold(), hold({ hold: 'h-2', operation: null })] })).toMatchObject([
      { rule: 'held', grade: 'refuse', hold: 'h-1', operation: 'wired', recorded: 'look-again' },
      { rule: 'held', grade: 'refuse', hold: 'h-2', operation: 'finished' },
    ]);
  });

  it('is not refused by the hold on its own record: asking is how that is mended', () => {
    expect(
      ask('finished', { holds: [hold({ operation: 'finished', characteristic: 'count' })] }),
    ).toStrictEqual([]);
  });

  it('told as passed in spite of a hold notes it, and the hold stays', () => {
    expect(tell('finished', { holds: [hold()] })).toMatchObject([{ rule: 'held', grade: 'note' }]);
  });

  it('minds holds, not defects: a defect that matters has one', () => {
    expect(ask('finished', { defects: [defect()] })).toStrictEqual([]);
  });
});

describe('the label (24 CFR 3282.362(c): only on a home that conforms)', () => {
  it('is refused while a nonconformance is open anywhere', () => {
    expect(ask('labelled', { defects: [defect()] })).toMatchObject([
      { rule: 'defect-open', grade: 'refuse', operation: 'wired', station: 'rough-in', defect: 'd-1' },
    ]);
    expect(ask('labelled', { defects: [defect({ operation: null, station: 'floor' })] })).toMatchObject([
      { rule: 'defect-open', operation: 'labelled', station: 'floor' },
    ]);
  });

  it('is not refused for punch and shortages: they are no nonconformances', () => {
    expect(
      ask('labelled', { defects: [defect({ class: 'punch' }), defect({ class: 'shortage' })] }),
    ).toStrictEqual([]);
  });

  it('told as affixed on a held section is as grave as asking for it', () => {
    expect(tell('labelled', { holds: [hold()] })).toMatchObject([{ rule: 'held', grade: 'refuse' }]);
  });
});

describe('a test', () => {
  it('is refused while what it needs is not on record', () => {
    expect(judgeAsking(plan, stateOf({}), { operation: 'tested', except: [] })).toMatchObject([
      { rule: 'required-work-unproven', grade: 'refuse', operation: 'wired' },
    ]);
  });

  it('is refused while what it needs is held or defective', () => {
    expect(ask('tested', { holds: [hold()] })).toMatchObject([{ rule: 'held', grade: 'refuse' }]);
    expect(ask('tested', { defects: [defect()] })).toMatchObject([{ rule: 'defect-open', grade: 'refuse' }]);
  });
});

describe('work that is missing and already held for it', () => {
  const boarded = operation('boarded', { hides: [hides('wired')] });
  const covering = planOfOperations(wired, boarded);
  const refused = (holds: Parameters<typeof hold>[0]) =>
    judgeAsking(covering, stateOf({}, { holds: [hold(holds)] }), { operation: 'boarded', except: [] });

  it('is named once, and the hold goes by its name', () => {
    expect(refused({ reason: 'required-work-unproven' })).toMatchObject([
      { rule: 'cover-hides-unproven', operation: 'wired', grade: 'refuse', hold: 'h-1' },
    ]);
  });

  it('is named beside a hold that stands for another reason', () => {
    expect(refused({ reason: 'look-again' }).map(({ rule }) => rule)).toStrictEqual([
      'cover-hides-unproven',
      'held',
    ]);
  });
});

describe('what is expected first', () => {
  it('is noted when it is not there, and stops nobody', () => {
    const expecting = planOfOperations(wired, operation('boxed', { expects: ['wired', 'not-in-this-plan'] }));
    expect(judgeAsking(expecting, stateOf({}), { operation: 'boxed', except: [] })).toMatchObject([
      { rule: 'expected-work-unproven', grade: 'note', operation: 'wired', entry: 'boxed' },
    ]);
  });
});
