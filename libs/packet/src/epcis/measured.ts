import type { RecordedValue } from '@libs/judge';
import { measureUnit } from '@libs/kernel';
import type { PacketFinding } from '../packet-home';
import type { SensorReport } from './epcis-event';

/** EPCIS type by kind of quantity; what has none of its own is dimensionless by the standard's list. */
const TYPES: { readonly [kind: string]: string } = {
  pressure: 'Pressure',
  length: 'Length',
  area: 'Area',
  mass: 'Mass',
  force: 'Force',
  torque: 'Torque',
  time: 'Time',
  temperature: 'Temperature',
  volume: 'Volume',
  voltage: 'Voltage',
  current: 'ElectricCurrent',
  resistance: 'Resistance',
  angle: 'Angle',
  frequency: 'Frequency',
  illuminance: 'Illuminance',
  flow: 'VolumeFlowRate',
  count: 'Count',
};

/** UN/ECE Recommendation 20 code by UCUM code: EPCIS takes no other. */
const REC20: { readonly [ucum: string]: string } = {
  '[psi]': 'PS',
  kPa: 'KPA',
  bar: 'BAR',
  Pa: 'PAL',
  "[in_i'H2O]": 'F78',
  "[in_i'Hg]": 'F79',
  '[in_i]': 'INH',
  '[ft_i]': 'FOT',
  '[mil_i]': '77',
  mm: 'MMT',
  cm: 'CMT',
  m: 'MTR',
  '[sft_i]': 'FTK',
  '[sin_i]': 'INK',
  m2: 'MTK',
  V: 'VLT',
  kV: 'KVT',
  A: 'AMP',
  mA: '4K',
  Ohm: 'OHM',
  MOhm: 'B75',
  s: 'SEC',
  min: 'MIN',
  h: 'HUR',
  d: 'DAY',
  '[degF]': 'FAH',
  Cel: 'CEL',
  K: 'KEL',
  '[lb_av]': 'LBR',
  kg: 'KGM',
  '[lbf_av]': 'C78',
  N: 'NEW',
  'N.m': 'NU',
  L: 'LTR',
  '[gal_us]': 'GLL',
  '[cft_i]': 'FTQ',
  'L/min': 'L2',
  '[cft_i]/min': '2L',
  '[gal_us]/min': 'G2',
  '[lbf_av].[ft_i]': 'M92',
  mV: '2Z',
  kOhm: 'B49',
  dB: '2N',
  '[ppm]': '59',
  '{each}': 'EA',
  '{piece}': 'H87',
  '1': 'C62',
  '%': 'P1',
  deg: 'DD',
  Hz: 'HTZ',
  lx: 'LUX',
};
const COUNTED = 'C62';
const NUMBER = /^-?(0|[1-9]\d*)(\.\d+)?$/;

/**
 * A value as a sensor report. The number is a float, because the standard's is one; the decimal as it was entered and
 * its UCUM unit stand beside it and are what the record means.
 */
export const reportOf = (value: RecordedValue, findings: readonly PacketFinding[]): SensorReport => ({
  ...reading(value),
  ...(findings.some((finding) => isAbout(finding, value)) ? { exception: 'ALARM_CONDITION' as const } : {}),
  'plant:characteristic': value.characteristic,
  'plant:value': value.value,
  ...(value.unit === null ? {} : { 'plant:unit': value.unit }),
  ...(value.place === undefined ? {} : { 'plant:place': value.place }),
});

const reading = ({ value, unit }: RecordedValue): SensorReport => {
  if (value === 'yes' || value === 'no') return { type: 'Dimensionless', booleanValue: value === 'yes' };
  const uom = unit === null ? COUNTED : REC20[unit];
  if (!NUMBER.test(value) || uom === undefined) return { type: 'Dimensionless', stringValue: value };
  return { type: typeFor(unit), value: Number(value), uom };
};

const typeFor = (unit: string | null): string => {
  const kind = unit === null ? undefined : measureUnit(unit)?.kind;
  return (kind === undefined ? undefined : TYPES[kind]) ?? (unit === null ? 'Count' : 'Dimensionless');
};

const isAbout = (finding: PacketFinding, value: RecordedValue): boolean =>
  finding.grade !== 'note' && finding.characteristic === value.characteristic;
