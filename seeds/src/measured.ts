import type { AnswerOf } from '@libs/contracts';
import type { Chance } from './random';

export type Card = AnswerOf<'section'>['operations'][number];
export type Asked = Card['values'][number];
export type Value = { characteristic: string; value: string; unit: string | null };

/** A requirement's one comparison: `>= 7`. Intervals, lists and words are read apart. */
const COMPARISON = /^(<=|>=|<|>)\s*(-?\d+(?:\.\d+)?)$/;
const INTERVAL = /^[[\](]\s*(-?\d+(?:\.\d+)?)\s*\.\.\s*(-?\d+(?:\.\d+)?)\s*[\])[]$/;
const NUMBER = /^-?\d+(?:\.\d+)?$/;
const WORD = /^"([^"]*)"/;

const places = (text: string): number => text.split('.')[1]?.length ?? 0;
const decimal = (value: number, digits: number): string =>
  digits === 0 ? String(Math.round(value)) : String(Number(value.toFixed(digits)));

/** How far from the limit people work: a little better than they must, and more often just at it. */
const better = (limit: number, upwards: boolean, chance: Chance): number => {
  const margin = Math.abs(limit) * 0.12 * chance.next() * chance.next();
  return upwards ? limit + margin : Math.max(0, limit - margin);
};
const worse = (limit: number, upwards: boolean, chance: Chance): number => {
  const margin = Math.abs(limit) * (0.08 + 0.3 * chance.next());
  return upwards ? Math.max(0, limit - margin) : limit + margin;
};

const digitsFor = (asked: Asked, limit: string): number =>
  asked.kind === 'count' ? 0 : Math.max(places(limit), Number(limit) < 20 ? 2 : 1);

const compared = (asked: Asked, chance: Chance, good: boolean): string | undefined => {
  const found = COMPARISON.exec(asked.required);
  if (found === null) return undefined;

  const [, op = '', limit = ''] = found;
  const upwards = op.startsWith('>');
  const digits = digitsFor(asked, limit);
  const number = Number(limit);
  const value = Number(decimal((good ? better : worse)(number, upwards, chance), digits));
  const mayBeAtLimit = good && op.length === 2;
  if (value !== number || mayBeAtLimit) return decimal(value, digits);

  const step = 10 ** -digits;
  return decimal(upwards === good ? number + step : number - step, digits);
};

const within = (asked: Asked, chance: Chance, good: boolean): string | undefined => {
  const found = INTERVAL.exec(asked.required);
  if (found === null) return undefined;

  const [low, high] = [Number(found[1]), Number(found[2])];
  const width = high - low;
  const digits = width > 20 ? 0 : 1;
  const value = good ? low + width * (0.2 + 0.6 * chance.next()) : high + width * (0.1 + 0.3 * chance.next());
  return decimal(value, digits);
};

const worded = (asked: Asked, chance: Chance, good: boolean): string | undefined => {
  const word = WORD.exec(asked.required)?.[1];
  if (asked.kind === 'yes-no') return good ? (word ?? 'yes') : word === 'no' ? 'yes' : 'no';
  if (word === undefined) return undefined;
  if (good) return word;

  const others = (asked.choices ?? []).filter((choice) => !asked.required.includes(`"${choice}"`));
  return others.length > 0 ? chance.pick(others) : `not ${word}`;
};

const exact = (asked: Asked, good: boolean): string | undefined => {
  const number = NUMBER.exec(asked.required)?.[0];
  if (number === undefined) return undefined;
  return good ? number : decimal(Number(number) + 1, places(number));
};

/** Figures that stand in a relation to each other: invented, and fit for one another. */
const USUAL: { readonly [characteristic: string]: string } = {
  'vent-area': '620',
  'high-vent-area': '330',
  'low-vent-area': '290',
  'floor-area': '1120',
  'gasket-gap': '1.7',
};

/** Where any value will do: what is plausible for its kind. */
const anything = (asked: Asked, chance: Chance): string => {
  const usual = USUAL[asked.characteristic];
  if (usual !== undefined) return usual;
  switch (asked.kind) {
    case 'measure':
      return decimal(10 + 10 * chance.next(), 1);
    case 'count':
      return String(chance.between(1, 6));
    case 'choice':
      return asked.choices?.[0] ?? 'as drawn';
    case 'yes-no':
      return 'yes';
    case 'date':
      return '2026-01-01';
    default:
      return 'as drawn';
  }
};

/** A value for one characteristic: within its limit when `good`, else just enough outside to matter. */
export const valueFor = (asked: Asked, chance: Chance, good = true): Value => ({
  characteristic: asked.characteristic,
  unit: asked.unit,
  value:
    compared(asked, chance, good) ??
    within(asked, chance, good) ??
    exact(asked, good) ??
    worded(asked, chance, good) ??
    anything(asked, chance),
});

/** What the person who signs is asked for: lots and instruments fill in their own, relations are worked out. */
export const typedValues = (card: Card): readonly Asked[] =>
  card.values.filter(
    (asked) => asked.from === 'entry' && asked.asked === 'always' && asked.kind !== 'derived',
  );

const START: { readonly [characteristic: string]: readonly string[] } = {
  'end-pressure': ['start-pressure', 'pressure'],
};

/** A pressure that holds reads at the end as at the start; one that does not has lost a little. */
export const asRelated = (values: readonly Value[], falls: boolean): readonly Value[] =>
  values.map((value) => {
    const start = values.find((one) => START[value.characteristic]?.includes(one.characteristic) === true);
    if (start === undefined) return value;
    return { ...value, value: falls ? decimal(Number(start.value) - 2.5, 1) : start.value };
  });

/** Those that can be out of limits at all. */
export const limited = (card: Card): readonly Asked[] =>
  typedValues(card).filter(
    (asked) => START[asked.characteristic] !== undefined || (asked.required !== '' && asked.required !== '-'),
  );
