import type { SentBodyOf } from '@libs/contracts';
import { isBelowZero, passes } from '@libs/judge';
import type { Test } from '@libs/judge';
import { inchesAsDecimal, isDecimal } from '@libs/kernel';
import { isInches } from '../../ui/metric';
import type { Card, ValueAsked } from './cards';

/** What was typed, by characteristic: `36 1/2` stays as it was typed until it is sent. */
export type Typed = { readonly [characteristic: string]: string };
export type SentValue = NonNullable<SentBodyOf<'work'>['values']>[number];

/** The boundary: the server sends the compiled test of the plan; the contract leaves its shape to the judge. */
const testOf = (asked: ValueAsked): Test => asked.test as Test;

export const isTyped = (asked: ValueAsked): boolean => asked.from === 'entry' && asked.kind !== 'derived';
export const isNumber = (asked: ValueAsked): boolean => asked.kind === 'measure' || asked.kind === 'count';

/** Decimal text of what was typed; null while it is no number yet. */
export const decimalOf = (typed: string, unit: string | null): string | null => {
  const text = typed.trim();
  if (isInches(unit)) return inchesAsDecimal(text) ?? null;
  return isDecimal(text) ? text : null;
};

const sendable = (asked: ValueAsked, typed: string): string | null => {
  if (typed.trim() === '') return null;
  return isNumber(asked) ? decimalOf(typed, asked.unit) : typed.trim();
};

export type Verdict = 'meets' | 'fails' | 'none' | Unfit;
/** What cannot be a value here at all, and why. */
export type Unfit = 'unreadable' | 'not-whole' | 'below-zero';

const WHOLE = /^(?:0|[1-9]\d*)$/;

const unfit = (asked: ValueAsked, value: string): Unfit | null => {
  if (asked.kind === 'count' && !WHOLE.test(value)) return 'not-whole';
  return isBelowZero({ kind: asked.kind, unit: asked.unit, test: testOf(asked) }, value)
    ? 'below-zero'
    : null;
};

/** Judged here by the same rule the server uses, so that a wrong value is seen before it is sent. */
export const judged = (asked: ValueAsked, typed: string): Verdict => {
  if (typed.trim() === '') return 'none';
  const value = sendable(asked, typed);
  if (value === null) return asked.kind === 'count' ? 'not-whole' : 'unreadable';
  const why = unfit(asked, value);
  if (why !== null) return why;
  return passes(testOf(asked), value, asked.unit, asked.unit) ? 'meets' : 'fails';
};

export const sentValues = (card: Card, typed: Typed): SentValue[] =>
  card.values.filter(isTyped).flatMap((asked) => {
    const value = sendable(asked, typed[asked.characteristic] ?? '');
    return value === null ? [] : [{ characteristic: asked.characteristic, value, unit: asked.unit }];
  });

/** The texts a plan itself names, offered as buttons; anything else is typed. */
export const textsIn = (test: Test): readonly string[] => {
  if (test.is === 'text') return [test.text];
  return test.is === 'anyOf' ? test.tests.flatMap(textsIn) : [];
};
export const choicesOf = (asked: ValueAsked): readonly string[] =>
  asked.choices ?? (asked.kind === 'choice' ? textsIn(testOf(asked)) : []);

/** The value "as planned" where there is only one: yes, the drawn size, none at all. */
export const onlyPlanned = (asked: ValueAsked): string | null => {
  const test = testOf(asked);
  switch (test.is) {
    case 'text':
      return asked.kind === 'yes-no' || asked.kind === 'choice' ? test.text : null;
    case 'boolean':
      return asked.kind === 'yes-no' ? yesOrNo(test.boolean) : null;
    case 'compare':
      return asked.kind === 'count' && test.op === '=' ? test.number : null;
    default:
      return null;
  }
};
const yesOrNo = (yes: boolean): string => (yes ? 'yes' : 'no');

export type Tally = { readonly missing: number; readonly failing: number; readonly unreadable: number };

export const tallyOf = (cards: readonly Card[], typedOf: (card: Card) => Typed): Tally => {
  const verdicts = cards.flatMap((card) =>
    card.values
      .filter(isTyped)
      .map((asked) => ({ asked, verdict: judged(asked, typedOf(card)[asked.characteristic] ?? '') })),
  );
  const count = (verdict: Verdict): number => verdicts.filter((one) => one.verdict === verdict).length;
  return {
    missing: verdicts.filter(({ asked, verdict }) => verdict === 'none' && asked.asked === 'always').length,
    failing: count('fails'),
    unreadable: count('unreadable') + count('not-whole') + count('below-zero'),
  };
};
