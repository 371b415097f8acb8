import { changed, DESIGN, problemsOf, resolved, SMALL } from '../support/small-rulebook';

const T = 'times.csv';
const HEADER = 'operation,since,at_least,at_most,unit,grade,source_kind,source,wind';
const withTimes = (...rows: readonly string[]) => ({ ...SMALL, [T]: [HEADER, ...rows].join('\n') });

describe('how long after another operation one may come', () => {
  it('is part of the plan, the most specific row for the design', () => {
    const files = withTimes(
      'boarded,wired,12,-,h,note,practice,practice,-',
      'boarded,wired,24,-,h,note,practice,practice,"""III"""',
      'finished,gassed,-,30,d,refuse,design,manual,-',
    );
    const timesOf = (id: string, wind = 'I') => resolved(files, { ...DESIGN, wind }).operations[id]?.times;
    expect(timesOf('boarded')).toMatchObject([
      { since: 'wired', atLeast: { value: '12', unit: 'h' }, atMost: null },
    ]);
    expect(timesOf('boarded', 'III')).toMatchObject([{ atLeast: { value: '24', unit: 'h' } }]);
    expect(timesOf('finished')).toMatchObject([{ since: 'gassed', atMost: { value: '30', unit: 'd' } }]);
    expect(timesOf('wired')).toBeUndefined();
  });

  it('sets no clock going by what does not apply to the design', () => {
    const files = withTimes('boarded,piped,12,-,h,note,practice,practice,-');
    expect(resolved(files, { ...DESIGN, role: 'dry' }).operations['boarded']?.times).toBeUndefined();
  });

  it.each([
    ['an operation nobody knows', 'boards,wired,12,-,h,note,practice,p,-', 'operation'],
    ['a start nobody knows', 'boarded,wires,12,-,h,note,practice,p,-', 'since'],
    ['an operation after itself', 'boarded,boarded,12,-,h,note,practice,p,-', 'since'],
    ['a unit of length', 'boarded,wired,12,-,m,note,practice,p,-', 'unit'],
    ['a time that is none', 'boarded,wired,soon,-,h,note,practice,p,-', 'at_least'],
    ['a time below nothing', 'boarded,wired,-,-5,h,note,practice,p,-', 'at_most'],
    ['no time at all', 'boarded,wired,-,-,h,note,practice,p,-', 'at_least'],
    ['most before least', 'boarded,wired,12,6,h,note,practice,p,-', 'at_most'],
    ['a condition on nothing', 'boarded,wired,12,-,h,note,practice,p,"""IV"""', 'wind'],
  ])('is refused for %s, with its row and column', (_what, row, column) => {
    expect(problemsOf(withTimes(row))).toContainEqual({ file: T, row: 2, column, says: expect.any(String) });
  });

  it('is refused where two rows as specific disagree', () => {
    const files = withTimes(
      'boarded,wired,12,-,h,note,practice,p,"""II"",""III"""',
      'boarded,wired,24,-,h,note,practice,p,"""I"",""II"""',
    );
    expect(problemsOf(files)).toMatchObject([{ file: T, row: 3, column: 'since' }]);
  });
});

describe('what an operation is built by', () => {
  it('may name its place in the manual and its drawings', () => {
    const files = changed(
      'operations.yaml',
      '  lots: [cable]\n',
      '  lots: [cable]\n  manual: QA 4.2\n  drawings: [E-101, E-102]\n',
    );
    expect(resolved(files).operations['wired']).toMatchObject({
      manual: 'QA 4.2',
      drawings: ['E-101', 'E-102'],
    });
    expect(resolved().operations['wired']).not.toHaveProperty('manual');
  });
});

describe('lots approved in place of others', () => {
  const files = {
    ...SMALL,
    'lots.csv':
      'kind,en,es,traced,instead_of\ncable,Cable,Cable,no,\nwide-cable,Wide cable,Cable ancho,no,cable\n',
  };

  it('stand beside the kind they may replace, in every operation that uses it', () => {
    expect(resolved(files).operations['wired']?.substitutes).toStrictEqual({ cable: ['wide-cable'] });
    expect(resolved(files).operations['gassed']).not.toHaveProperty('substitutes');
  });

  it('are refused for a kind nobody knows, or themselves', () => {
    const change = (to: string) =>
      problemsOf({ ...files, 'lots.csv': files['lots.csv'].replace('no,cable', `no,${to}`) });
    expect(change('wire')).toMatchObject([{ file: 'lots.csv', row: 3, column: 'instead_of' }]);
    expect(change('wide-cable')).toMatchObject([{ file: 'lots.csv', row: 3, column: 'instead_of' }]);
  });
});
