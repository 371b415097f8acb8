import type { Entry, RecordedValue } from './entry';
import type { Finding } from './finding';
import { servesAs } from './lot-kinds';
import type { Grade, PlannedOperation, PlannedValue } from './plan';
import { isOfKind, passes } from './reading';
import type { Readings } from './relation';
import { alternativesOf, partsOf, unmetAt } from './relation';
import { worstOf } from './worst';

/** What is to be said of the values: of the wrong kind, missing, out of limits, or not fitting together. */
export const judgeValues = (operation: PlannedOperation, entry: Entry): readonly Finding[] => {
  const { values } = operation;
  if (values.length === 0) return [];

  const findings: Finding[] = [];
  let given: Readings | undefined;
  for (const planned of values) {
    if (planned.kind === 'derived') {
      given ??= allReadings(operation, entry);
      findings.push(...judgeRelation(operation, planned, given));
      continue;
    }
    const readings = readingsOf(operation, planned, entry);
    findings.push(...judgeReadings({ operation, planned, except: entry.except }, readings));
  }
  return findings;
};

const allReadings = (operation: PlannedOperation, entry: Entry): Readings =>
  new Map(operation.values.map((value) => [value.characteristic, readingsOf(operation, value, entry)]));

/** Typed by whoever signs, or filled in from the lot's certificate or the instrument's record: never both. */
const readingsOf = (
  operation: PlannedOperation,
  planned: PlannedValue,
  entry: Entry,
): readonly RecordedValue[] =>
  sourceOf(operation, planned, entry).filter(
    ({ characteristic }) => characteristic === planned.characteristic,
  );

const sourceOf = (
  operation: PlannedOperation,
  planned: PlannedValue,
  entry: Entry,
): readonly RecordedValue[] => {
  switch (planned.from) {
    case 'entry':
      return entry.values;
    case 'lot':
      return entry.lots
        .filter(({ kind }) => servesAs(operation, kind, planned.lotKind))
        .flatMap(({ properties }) => properties);
    case 'instrument':
      return entry.instrument?.properties ?? [];
  }
};

type Asked = {
  readonly operation: PlannedOperation;
  readonly planned: PlannedValue;
  /** Places where the work is not done yet: nothing is read there. */
  readonly except: readonly string[];
};

const judgeReadings = (asked: Asked, readings: readonly RecordedValue[]): readonly Finding[] => {
  const { operation, planned } = asked;
  if (readings.length === 0) return planned.asked === 'always' ? [missing(operation, planned)] : NOTHING;
  if (planned.places === undefined && readings.every((reading) => isMet(planned, reading))) return NOTHING;

  const wrong = readings.filter((reading) => !isOfKind(planned, reading));
  const failing = readings.filter((reading) => !wrong.includes(reading) && !isMet(planned, reading));
  const unread = unreadPlaces(asked, readings);
  return [
    ...(unread.length > 0 ? [{ ...missing(operation, planned), places: unread }] : []),
    ...wrong.slice(0, 1).map((reading) => ofWrongKind(operation, planned, reading)),
    ...(failing.length > 0 ? [outOfLimits(operation, planned, failing)] : []),
  ];
};

const NOTHING: readonly Finding[] = [];

const isMet = (planned: PlannedValue, reading: RecordedValue): boolean =>
  isOfKind(planned, reading) && passes(planned.test, reading.value, reading.unit, planned.unit);

/** Where a reading is asked for at each of several places; one that names no place speaks for none of them. */
const unreadPlaces = ({ planned, except }: Asked, readings: readonly RecordedValue[]): readonly string[] =>
  planned.places === undefined || planned.worstOf > 1
    ? []
    : planned.places.filter(
        (place) => !except.includes(place) && !readings.some((reading) => reading.place === place),
      );

/** A relation is judged once its parts are there; some without the others leave it unproven. */
const judgeRelation = (
  operation: PlannedOperation,
  planned: PlannedValue,
  given: Readings,
): readonly Finding[] => {
  const alternatives = alternativesOf(planned);
  if (alternatives === undefined) return [];
  const parts = partsOf(alternatives);
  const absent = parts.filter((part) => (given.get(part) ?? []).length === 0);
  if (absent.length > 0) {
    return absent.length < parts.length ? partsMissing(operation, planned, absent) : [];
  }
  const planOf = new Map(operation.values.map((value) => [value.characteristic, value]));
  const sound = parts.every((part) => (given.get(part) ?? []).every((one) => isSound(planOf.get(part), one)));
  const places = sound ? unmetAt(alternatives, given) : undefined;
  return places === undefined ? [] : [unmet(operation, planned, { parts, given, places })];
};

const isSound = (planned: PlannedValue | undefined, reading: RecordedValue): boolean =>
  planned !== undefined && isOfKind(planned, reading);

/** A part that is always asked for is missed under its own name already. */
const partsMissing = (
  operation: PlannedOperation,
  planned: PlannedValue,
  absent: readonly string[],
): readonly Finding[] =>
  operation.values
    .filter(({ characteristic, asked }) => absent.includes(characteristic) && asked === 'where-any')
    .map((part) => ({ ...missing(operation, planned), characteristic: part.characteristic }));

const about = (
  operation: PlannedOperation,
  planned: PlannedValue,
): Pick<Finding, 'operation' | 'station' | 'characteristic' | 'required' | 'source'> => ({
  operation: operation.id,
  station: operation.station,
  characteristic: planned.characteristic,
  required: planned.required,
  source: planned.source,
});

/** The work may be right and only its record short: nothing graver than a hold, and no nonconformance. */
const missing = (operation: PlannedOperation, planned: PlannedValue): Finding => ({
  rule: 'value-missing',
  grade: atMostHold(planned.grade),
  class: 'record',
  ...about(operation, planned),
  ...unitOf(planned.unit),
});

const ofWrongKind = (
  operation: PlannedOperation,
  planned: PlannedValue,
  reading: RecordedValue,
): Finding => ({
  rule: 'value-of-wrong-kind',
  grade: 'refuse',
  class: 'record',
  ...about(operation, planned),
  recorded: reading.value,
  ...unitOf(reading.unit),
});

const outOfLimits = (
  operation: PlannedOperation,
  planned: PlannedValue,
  failing: readonly RecordedValue[],
): Finding => {
  const worst = worstOf(planned.test, failing, planned.unit);
  return {
    rule: 'value-out-of-limits',
    grade: planned.grade,
    class: 'nonconformance',
    ...about(operation, planned),
    recorded: worst?.value ?? '',
    ...unitOf(worst?.unit ?? null),
    ...placesOf(failing.flatMap(({ place }) => place ?? [])),
  };
};

const unmet = (
  operation: PlannedOperation,
  planned: PlannedValue,
  { parts, given, places }: { parts: readonly string[]; given: Readings; places: readonly string[] },
): Finding => ({
  rule: 'relation-not-met',
  grade: planned.grade,
  class: 'nonconformance',
  ...about(operation, planned),
  recorded: parts.map((part) => `${part} ${told(given.get(part) ?? [])}`).join(', '),
  ...placesOf(places),
});

const told = (readings: readonly RecordedValue[]): string =>
  readings.map(({ value, unit }) => (unit === null ? value : `${value} ${unit}`)).join(' ');

const unitOf = (unit: string | null): { readonly unit?: string } => (unit === null ? {} : { unit });
const placesOf = (places: readonly string[]): { readonly places?: readonly string[] } =>
  places.length === 0 ? {} : { places: [...new Set(places)] };

export const atMostHold = (grade: Grade): Grade => (grade === 'refuse' ? 'hold' : grade);
