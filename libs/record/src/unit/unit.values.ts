import { isBelowZero } from '@libs/judge';
import type { PlannedOperation, PlannedValue, RecordedValue } from '@libs/judge';
import { isDecimal, measureUnit } from '@libs/kernel';
import type { Codes } from './unit.facts';
import type { Guard } from './unit.rejections';

/** What cannot be a value of this characteristic at all. A value out of its limits can: that is for the judge. */
export const valuesGuard = (
  planned: PlannedOperation | undefined,
  values: readonly RecordedValue[],
  codes: Codes,
): Guard => first(values, (value) => valueGuard(planned, value, codes));

export const first = <T>(all: readonly T[], guard: (one: T) => Guard): Guard => {
  for (const one of all) {
    const found = guard(one);
    if (found !== null) return found;
  }
  return null;
};

/** A kind of which the rulebook lists none takes any code. */
export const isKnown = (codes: ReadonlySet<string>, code: string): boolean =>
  codes.size === 0 || codes.has(code);

export const placesGuard = (places: readonly string[], codes: Codes): Guard =>
  first(places, (place) => (isKnown(codes.places, place) ? null : { code: 'place-unknown', place }));

const valueGuard = (planned: PlannedOperation | undefined, given: RecordedValue, codes: Codes): Guard => {
  const unknownPlace = given.place === undefined ? null : placesGuard([given.place], codes);
  if (unknownPlace !== null || planned === undefined) return unknownPlace;

  const { characteristic } = given;
  const asked = planned.values.find((value) => value.characteristic === characteristic);
  return asked === undefined ? { code: 'characteristic-unknown', characteristic } : kindGuard(asked, given);
};

const DAY = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/;
const WHOLE = /^(?:0|[1-9]\d*)$/;

type Form = {
  readonly is: (value: string) => boolean;
  readonly code: 'value-not-a-number' | 'value-not-a-count' | 'value-not-yes-or-no' | 'value-not-a-date';
};

/** What a value of each kind looks like; any text is a choice or a text. */
const FORMS: { readonly [kind in PlannedValue['kind']]?: Form } = {
  measure: { is: isDecimal, code: 'value-not-a-number' },
  count: { is: (value) => WHOLE.test(value), code: 'value-not-a-count' },
  'yes-no': { is: (value) => value === 'yes' || value === 'no', code: 'value-not-yes-or-no' },
  date: { is: (value) => DAY.test(value), code: 'value-not-a-date' },
};

/** Lots and instruments fill in their own values, and relations are worked out. */
const isTyped = ({ from, kind }: PlannedValue): boolean => from === 'entry' && kind !== 'derived';

const kindGuard = (asked: PlannedValue, given: RecordedValue): Guard => {
  const { characteristic, value } = given;
  const form = FORMS[asked.kind];
  if (!isTyped(asked)) return { code: 'characteristic-not-entered', characteristic };
  if (form?.is(value) === false) return { code: form.code, characteristic, value };
  if (isBelowZero(asked, value)) return { code: 'value-below-zero', characteristic, value };
  if (!isChoice(asked, value)) return { code: 'choice-unknown', characteristic, value };

  return asked.kind === 'measure' || asked.kind === 'count'
    ? unitGuard(asked, given)
    : noUnitGuard(asked, given);
};

const isChoice = ({ kind, choices = [] }: PlannedValue, value: string): boolean =>
  kind !== 'choice' || choices.length === 0 || choices.includes(value);

/** A count without a unit is a count; any other value says in which unit it was read. */
const unitGuard = (asked: PlannedValue, { characteristic, unit }: RecordedValue): Guard => {
  if (unit === asked.unit) return null;
  if (unit === null) return asked.unit === '1' ? null : otherKind(characteristic, unit, asked);

  const known = measureUnit(unit);
  if (known === undefined) return { code: 'unit-unknown', characteristic, unit };
  const wanted = asked.unit === null ? undefined : measureUnit(asked.unit);
  return wanted?.kind === known.kind || (asked.unit === null && unit === '1')
    ? null
    : otherKind(characteristic, unit, asked);
};

const noUnitGuard = (asked: PlannedValue, { characteristic, unit }: RecordedValue): Guard =>
  unit === null ? null : otherKind(characteristic, unit, asked);

const otherKind = (characteristic: string, unit: string | null, asked: PlannedValue): Guard => ({
  code: 'unit-of-other-kind',
  characteristic,
  unit,
  asked: asked.unit,
});
