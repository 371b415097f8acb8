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
  if (asked === undefined) return { code: 'characteristic-unknown', characteristic };
  if (asked.from !== 'entry' || asked.kind === 'derived') {
    return { code: 'characteristic-not-entered', characteristic };
  }
  return kindGuard(asked, given);
};

const YES_OR_NO = /^(?:yes|no)$/;
const DAY = /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/;
const WHOLE = /^(?:0|[1-9]\d*)$/;

const kindGuard = (asked: PlannedValue, given: RecordedValue): Guard => {
  const { characteristic, value } = given;
  switch (asked.kind) {
    case 'measure':
      return isDecimal(value)
        ? unitGuard(asked, given)
        : { code: 'value-not-a-number', characteristic, value };
    case 'count':
      return WHOLE.test(value)
        ? unitGuard(asked, given)
        : { code: 'value-not-a-number', characteristic, value };
    case 'choice':
      return choiceGuard(asked, given) ?? noUnitGuard(asked, given);
    case 'yes-no':
      return YES_OR_NO.test(value)
        ? noUnitGuard(asked, given)
        : { code: 'value-not-yes-or-no', characteristic, value };
    case 'date':
      return DAY.test(value)
        ? noUnitGuard(asked, given)
        : { code: 'value-not-a-date', characteristic, value };
    default:
      return noUnitGuard(asked, given);
  }
};

const choiceGuard = ({ choices }: PlannedValue, { characteristic, value }: RecordedValue): Guard =>
  choices === undefined || choices.length === 0 || choices.includes(value)
    ? null
    : { code: 'choice-unknown', characteristic, value };

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
