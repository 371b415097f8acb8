import type { ValueAsked } from '../../apps/web/src/screens/station/cards';
import {
  choicesOf,
  decimalOf,
  judged,
  onlyPlanned,
  sentValues,
  tallyOf,
} from '../../apps/web/src/screens/station/values';
import type { Card } from '../../apps/web/src/screens/station/cards';
import { asRead, inMetric } from '../../apps/web/src/ui/metric';

const asked = (more: Partial<ValueAsked>): ValueAsked => ({
  characteristic: 'edge',
  label: { en: 'Edge', es: 'Orilla' },
  kind: 'measure',
  unit: '[in_i]',
  unitSymbol: 'in',
  required: '>= 1.25',
  requiredSays: { en: 'at least 1-1/4 in', es: 'al menos 1-1/4 in' },
  test: { is: 'compare', op: '>=', number: '1.25' },
  from: 'entry',
  asked: 'always',
  worstOf: 1,
  grade: 'hold',
  source: { kind: 'published', reference: 'NEC 300.4(A)(1)', row: 'values.csv:1' },
  ...more,
});
const notches = asked({
  characteristic: 'notches',
  kind: 'count',
  unit: '1',
  test: { is: 'compare', op: '=', number: '0' },
});
const sleeve = asked({
  characteristic: 'sleeve',
  kind: 'yes-no',
  unit: null,
  test: { is: 'text', text: 'yes' },
});

const card = (values: readonly ValueAsked[]): Card => ({
  operation: 'wired',
  name: { en: 'Wired', es: 'Cableada' },
  station: 'rough-in',
  crew: 'electrical',
  entry: 'V',
  mark: 'due',
  except: [],
  cover: false,
  gate: false,
  label: false,
  hides: [],
  waitsFor: [],
  photo: 'none',
  instrument: null,
  caution: null,
  values: [...values],
  done: null,
});

describe('a value on the keypad', () => {
  // NEC 300.4(A)(1): a bored hole keeps 1-1/4 in to the edge of the stud, or a plate protects it.
  it.each([
    ['1 1/4', 'meets'],
    ['1.25', 'meets'],
    ['1 3/16', 'fails'],
    ['1', 'fails'],
    ['1 1/', 'unreadable'],
    ['wide', 'unreadable'],
    ['-3', 'below-zero'],
    ['', 'none'],
  ])('of %s in where at least 1-1/4 in is required: %s', (typed, verdict) => {
    expect(judged(asked({}), typed)).toBe(verdict);
  });

  it('is no reading below zero, unless the rulebook itself names a limit there', () => {
    const pressure = { unit: '[psi]', test: { is: 'compare', op: '<=', number: '3' } };
    expect(judged(asked(pressure), '-1')).toBe('below-zero');
    const from = { is: 'interval', from: '-2', fromClosed: true, to: '2', toClosed: true };
    expect(judged(asked({ unit: '[psi]', test: from }), '-1')).toBe('meets');
    expect(judged(asked({ unit: '[degF]', test: { is: 'any' } }), '-5')).toBe('meets');
  });

  it.each(['-5', '0.5', 'x'])('that counts is a whole number, zero or more, so not %s', (typed) => {
    expect(judged(notches, typed)).toBe('not-whole');
  });

  it('that is a choice is offered as the plan names it', () => {
    const text = (name: string) => ({ is: 'text', text: name });
    const test = { is: 'anyOf', tests: [text('2x6 at 16 in'), text('2x4 at 16 in')] };
    const framing = asked({ kind: 'choice', unit: null, test });
    expect(choicesOf(framing)).toStrictEqual(['2x6 at 16 in', '2x4 at 16 in']);
    expect(choicesOf(asked({ ...framing, choices: ['a', 'b'] }))).toStrictEqual(['a', 'b']);
  });

  it('reads a tape fraction as its exact decimal', () => {
    expect(decimalOf('36 3/16', '[in_i]')).toBe('36.1875');
    expect(decimalOf('36 3/16', '[ft_i]')).toBeNull();
  });

  it('is sent as decimal text with its unit, and what is not filled in is not sent', () => {
    expect(sentValues(card([asked({}), notches, sleeve]), { edge: '1 1/2', sleeve: 'yes' })).toStrictEqual([
      { characteristic: 'edge', value: '1.5', unit: '[in_i]' },
      { characteristic: 'sleeve', value: 'yes', unit: null },
    ]);
  });

  it('is counted before it is sent: what fails, what is missing, what cannot be read', () => {
    const tally = tallyOf([card([asked({}), notches, sleeve])], () => ({ edge: '1', notches: 'x' }));
    expect(tally).toStrictEqual({ failing: 1, unreadable: 1, missing: 1 });
  });

  it('is filled in by "as planned" only where the plan leaves one answer', () => {
    expect([asked({}), notches, sleeve].map(onlyPlanned)).toStrictEqual([null, '0', 'yes']);
  });
});

describe('a value read in another system', () => {
  // 1 in is 25.4 mm exactly (NIST SP 811, table 7); 1 psi is 6.894757 kPa (NIST SP 811, appendix B.8).
  it.each([
    ['1.25', '[in_i]', '31.75 mm'],
    ['10', '[ft_i]', '3.048 m'],
    ['100', '[psi]', '689.5 kPa'],
  ])('%s %s is %s', (decimal, unit, metric) => {
    expect(inMetric(decimal, unit, 'en-US')).toBe(metric);
  });

  it('has nothing beside it where there is nothing to convert', () => {
    expect(inMetric('3', '1', 'en-US')).toBeNull();
    expect(inMetric('yes', null, 'en-US')).toBeNull();
  });

  it('is shown as a tape shows it, its unit beside it', () => {
    expect(asRead('1.25', '[in_i]')).toBe('1 1/4 in');
    expect(asRead('7', '1')).toBe('7');
  });
});
