import type { Rational } from '@libs/kernel';
import { compare, inBase, plus, rationalOf, times } from '@libs/kernel';
import type { RecordedValue } from './entry';
import type { Alternatives, PlannedValue, Relation, RelationTerm } from './plan';
import { baseNumber, holds } from './reading';

/** The readings of each characteristic that count, by name. */
export type Readings = ReadonlyMap<string, readonly RecordedValue[]>;

/** What a derived row asks: one relation, or several ways of meeting it. Undefined for any other row. */
export const alternativesOf = ({ relation, alternatives }: PlannedValue): Alternatives | undefined =>
  alternatives ?? (relation === undefined ? undefined : [[relation]]);

export const partsOf = (alternatives: Alternatives): readonly string[] => [
  ...new Set(
    alternatives
      .flat()
      .flatMap(({ left, right }) => [...left, ...right])
      .flatMap(({ characteristic }) => characteristic ?? []),
  ),
];

/**
 * The places where no way of meeting it is met; undefined where it is met everywhere. Readings taken at places are
 * compared place by place; several of one characteristic at one place must all meet it, so that the
 * worst of them decide.
 */
export const unmetAt = (alternatives: Alternatives, readings: Readings): readonly string[] | undefined => {
  const all = partsOf(alternatives).flatMap((part) => readings.get(part) ?? []);
  const places = [...new Set(all.flatMap(({ place }) => place ?? []))];
  const isMetBy = (some: Readings): boolean =>
    alternatives.some((way) => way.every((relation) => isMet(relation, some)));
  if (places.length === 0) return isMetBy(readings) ? undefined : [];

  const unmet = places.filter((place) => !isMetBy(readingsAt(readings, place)));
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

const negated = ({ factor, ...term }: RelationTerm): RelationTerm => ({
  factor: factor.startsWith('-') ? factor.slice(1) : `-${factor}`,
  ...term,
});

const endsOf = (
  term: RelationTerm,
  readings: Readings,
): { readonly low: Rational; readonly high: Rational } => {
  if (term.characteristic === null) {
    const constant =
      (term.unit === undefined ? undefined : inBase(term.factor, term.unit)) ?? rationalOf(term.factor);
    return { low: constant, high: constant };
  }
  const factor = rationalOf(term.factor);

  const numbers = (readings.get(term.characteristic) ?? []).flatMap((reading) => baseNumber(reading) ?? []);
  const [first = ZERO, ...rest] = numbers.map((number) => times(factor, number));
  return {
    low: rest.reduce((low, number) => (compare(number, low) < 0 ? number : low), first),
    high: rest.reduce((high, number) => (compare(number, high) > 0 ? number : high), first),
  };
};

const total = (numbers: readonly Rational[]): Rational => numbers.reduce(plus, ZERO);
