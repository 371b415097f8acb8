import type { Entry, PlannedOperation } from '@libs/judge';
import { judgeWork } from '@libs/judge';
import { entryOf, nothingDone, operation, planOfOperations } from '../support/judging';

const tell = (planned: Partial<PlannedOperation>, change: Partial<Entry>) =>
  judgeWork(planOfOperations(operation('tested', planned)), nothingDone, entryOf('tested', change));

describe('photos', () => {
  it.each(['always', 'gauge'] as const)('asked for (%s) and not taken are noted', (photo) => {
    expect(tell({ photo }, {})).toMatchObject([{ rule: 'photo-missing', grade: 'note', class: 'record' }]);
    expect(tell({ photo }, { photos: ['f'] })).toStrictEqual([]);
  });

  it.each(['sample', 'none'] as const)(
    'are not missed where they are asked for now and then (%s)',
    (photo) => {
      expect(tell({ photo }, {})).toStrictEqual([]);
    },
  );
});

describe('lots', () => {
  const cable = (usable: boolean): Entry['lots'][number] => ({
    lot: 'L-1',
    kind: 'cable',
    usable,
    properties: [],
  });

  it('that nobody mounted or scanned are noted', () => {
    expect(tell({ lots: ['cable', 'plate'] }, { lots: [cable(true)] })).toMatchObject([
      { rule: 'lot-missing', grade: 'note', class: 'record', required: 'plate' },
    ]);
  });

  it('in quarantine or past their day hold the section: the material differs', () => {
    expect(tell({ lots: ['cable'] }, { lots: [cable(false)] })).toMatchObject([
      { rule: 'lot-not-usable', grade: 'hold', class: 'nonconformance', recorded: 'L-1' },
    ]);
  });

  it('of a kind the operation does not use are none of its business', () => {
    expect(tell({}, { lots: [cable(false)] })).toStrictEqual([]);
  });
});

describe('instruments', () => {
  const gauge = (change: Partial<NonNullable<Entry['instrument']>> = {}): Entry['instrument'] => ({
    instrument: 'G-1',
    kind: 'gas-gauge',
    usable: true,
    properties: [],
    ...change,
  });
  const test: Partial<PlannedOperation> = { entry: 'T', instrument: 'gas-gauge' };

  it('that are not named leave the test unproven', () => {
    expect(tell(test, {})).toMatchObject([
      { rule: 'instrument-missing', grade: 'hold', class: 'record', required: 'gas-gauge' },
    ]);
  });

  it('of another kind are not the one that was needed', () => {
    expect(tell(test, { instrument: gauge({ kind: 'water-gauge' }) })).toMatchObject([
      { rule: 'instrument-missing', recorded: 'water-gauge' },
    ]);
  });

  it('out of calibration leave it unproven too', () => {
    expect(tell(test, { instrument: gauge({ usable: false }) })).toMatchObject([
      { rule: 'instrument-not-usable', grade: 'hold', class: 'record', recorded: 'G-1' },
    ]);
    expect(tell(test, { instrument: gauge() })).toStrictEqual([]);
  });
});

describe('the place of work', () => {
  it('other than the operation’s own station is noted: crews walk', () => {
    expect(tell({}, { station: 'final' })).toMatchObject([
      {
        rule: 'worked-elsewhere',
        grade: 'note',
        required: 'rough-in',
        recorded: 'final',
        station: 'rough-in',
      },
    ]);
    expect(tell({}, { station: 'rough-in' })).toStrictEqual([]);
    expect(tell({}, { station: null })).toStrictEqual([]);
  });

  it('for an operation that is not in the plan is held and charged to nobody', () => {
    expect(judgeWork(planOfOperations(), nothingDone, entryOf('tested'))).toMatchObject([
      { rule: 'operation-not-planned', grade: 'hold', class: 'record', station: null },
    ]);
  });
});
