import type { Cause } from './cause';
import { ROW_FACTORS, valuesReader } from './row-factors';
import type { RowFactor } from './row-factors';
import { rowValues } from './row-values';
import { sequencesOf } from './sequences';
import type { Sequence } from './sequences';
import type { HomeRow, LotRow } from './trace-rows';
import { dayOf, everySection } from './units';
import type { Unit } from './units';

/** Why a home is thought to share a cause, surest first. */
export const EXPOSURE_REASONS = ['recorded', 'rows-around-agree', 'cannot-be-excluded'] as const;
export type ExposureReason = (typeof EXPOSURE_REASONS)[number];

export type ExposedHome = {
  readonly home: string;
  readonly where: HomeRow['where'];
  readonly reason: ExposureReason;
  /** The sections that share it; all of them where the cause is the whole home's. */
  readonly sections: readonly string[];
};

/**
 * Known exactly, or the whole identifiable group where some members cannot be told (3282.404(b)-(c)). Which of the two
 * a class of homes is made by is for the one who determines it.
 */
export const EXPOSURE_METHODS = ['exact', 'whole-group'] as const;
export type ExposureMethod = (typeof EXPOSURE_METHODS)[number];

export type ExposureInput = {
  readonly homes: readonly HomeRow[];
  readonly lots: readonly LotRow[];
};

/** The homes that share the cause, in the plant, in the yard and sold, in the order they were built. */
export const exposureOf = (
  cause: Cause,
  input: ExposureInput,
  method: ExposureMethod = 'whole-group',
): readonly ExposedHome[] => {
  const units = everySection(input.homes);
  const reasons = reasonsOf(cause, units, input);
  const byHome = new Map<HomeRow, { reason: ExposureReason; sections: string[] }>();
  reasons.forEach((reason, at) => {
    const unit = units[at];
    if (unit === undefined || reason === null) return;
    if (method === 'exact' && reason === 'cannot-be-excluded') return;
    const soFar = byHome.get(unit.home) ?? { reason, sections: [] };
    byHome.set(unit.home, { reason: surer(soFar.reason, reason), sections: [...soFar.sections, unit.id] });
  });
  return [...byHome].map(([home, shared]) => ({ home: home.home, where: home.where, ...shared }));
};

type Reasons = readonly (ExposureReason | null)[];

const surer = (one: ExposureReason, other: ExposureReason): ExposureReason =>
  EXPOSURE_REASONS.indexOf(one) <= EXPOSURE_REASONS.indexOf(other) ? one : other;

const isRowFactor = (factor: Cause['factor']): factor is RowFactor =>
  ROW_FACTORS.some((one) => one === factor);

const reasonsOf = (cause: Cause, units: readonly Unit[], { lots }: ExposureInput): Reasons => {
  const { factor, value } = cause;
  switch (factor) {
    case 'design':
      return units.map(({ home }) => recordedIf(home.model === value));
    case 'hauler':
    case 'installer':
    case 'retailer':
      return units.map(({ home }) => recordedIf(home[factor] === value));
    case 'window':
      return units.map((unit) => inStretch(unit, cause));
    case 'every':
      return cause.operation === null ? units.map(() => 'recorded') : ofRows(cause, units, () => 'recorded');
    case 'unrecorded':
      return ofRows(cause, units, ({ rows }, at) => recordedIf(rows[at]?.marks.includes('missing') === true));
    default:
      return isRowFactor(factor) ? ofValues({ cause, factor }, units, lots) : units.map(() => null);
  }
};

const recordedIf = (shares: boolean): ExposureReason | null => (shares ? 'recorded' : null);

const inStretch = ({ builtDay }: Unit, { value, widest }: Cause): ExposureReason | null => {
  if (builtDay === null) return 'cannot-be-excluded';
  if (isWithin(builtDay, value)) return 'recorded';
  return isWithin(builtDay, widest ?? null) ? 'cannot-be-excluded' : null;
};

const isWithin = (day: number, stretch: string | null): boolean => {
  const [from, to] = (stretch ?? '').split('..');
  return from !== undefined && to !== undefined && day >= dayOf(from) && day <= dayOf(to);
};

const ofRows = (
  { operation }: Cause,
  units: readonly Unit[],
  reasonAt: (sequence: Sequence, at: number) => ExposureReason | null,
): Reasons => {
  const reasons: (ExposureReason | null)[] = units.map(() => null);
  for (const sequence of sequencesOf(units)) {
    if (operation !== null && sequence.operation !== operation) continue;
    sequence.units.forEach((unit, at) => {
      const reason = reasonAt(sequence, at);
      if (reason !== null) reasons[unit] = surer(reasons[unit] ?? reason, reason);
    });
  }
  return reasons;
};

const ofValues = (
  { cause, factor }: { readonly cause: Cause; readonly factor: RowFactor },
  units: readonly Unit[],
  lots: readonly LotRow[],
): Reasons => {
  const valuesIn = valuesReader(lots);
  const value = cause.value ?? '';
  let current: { readonly of: Sequence; readonly values: ReturnType<typeof rowValues> } | null = null;
  return ofRows(cause, units, (sequence, at) => {
    if (current?.of !== sequence) current = { of: sequence, values: rowValues(sequence, factor, valuesIn) };
    const row = sequence.rows[at];
    if (row !== undefined && valuesIn(row, factor).includes(value)) return 'recorded';
    if (current.values.known[at]?.includes(value) === true) return 'rows-around-agree';
    return current.values.possible[at]?.includes(value) === true ? 'cannot-be-excluded' : null;
  });
};
