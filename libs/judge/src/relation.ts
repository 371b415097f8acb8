import type { Rational } from '@libs/kernel';
import { compare, plus, rationalOf, times } from '@libs/kernel';
import type { RecordedValue } from './entry';
import type { Relation, RelationTerm } from './plan';
import { baseNumber, holds } from './reading';

/** The readings of each characteristic that count, by name. */
export type Readings = ReadonlyMap<string, readonly RecordedValue[]>;

export const partsOf = (relation: Relation): readonly string[] => [
  ...new Set([...relation.left, ...relation.right].flatMap(({ characteristic }) => characteristic ?? [])),
];

/**
 * The places where the relation is not met; undefined where it is met everywhere. Readings taken at places are
 * compared place by place; several of one characteristic at one place must all meet it, so that the
 * worst of them decide.
 */
export const unmetAt = (relation: Relation, readings: Readings): readonly string[] | undefined => {
  const all = partsOf(relation).flatMap((part) => readings.get(part) ?? []);
  const places = [...new Set(all.flatMap(({ place }) => place ?? []))];
  if (places.length === 0) return isMet(relation, readings) ? undefined : [];

  const unmet = places.filter((place) => !isMet(relation, readingsAt(readings, place)));
  return unmet.length === 0 ? undefined : unmet;
};

/** At a place: what was read there, else what was read for no place, else all there is. */
const readingsAt = (readings: Readings, place: string): Readings =>
  new Map(
    [...readings].map(([characteristic, list]) => {
      const here = list.filter((reading) => reading.place === place);
      const anywhere = list.filter((reading) => reading.place === undefined);
      return [characteristic, here.length > 0 ? here : anywhere.length > 0 ? anywhere : list];
    }),
  );

const ZERO: Rational = { num: 0n, den: 1n };

/** Left minus right at its smallest and its largest: a linear relation that holds at both ends holds between. */
const isMet = ({ left, op, right }: Relation, readings: Readings): boolean => {
  const ends = [...left, ...right.map(negated)].map((term) => endsOf(term, readings));
  return (
    holds(compare(total(ends.map(({ low }) => low)), ZERO), op) &&
    holds(compare(total(ends.map(({ high }) => high)), ZERO), op)
  );
};

const negated = ({ factor, characteristic }: RelationTerm): RelationTerm => ({
  factor: factor.startsWith('-') ? factor.slice(1) : `-${factor}`,
  characteristic,
});

const endsOf = (
  term: RelationTerm,
  readings: Readings,
): { readonly low: Rational; readonly high: Rational } => {
  const factor = rationalOf(term.factor);
  if (term.characteristic === null) return { low: factor, high: factor };

  const numbers = (readings.get(term.characteristic) ?? []).flatMap((reading) => baseNumber(reading) ?? []);
  const [first = ZERO, ...rest] = numbers.map((number) => times(factor, number));
  return {
    low: rest.reduce((low, number) => (compare(number, low) < 0 ? number : low), first),
    high: rest.reduce((high, number) => (compare(number, high) > 0 ? number : high), first),
  };
};

const total = (numbers: readonly Rational[]): Rational => numbers.reduce(plus, ZERO);
