import type { Rational } from './decimal';
import { rationalOf, times } from './decimal';

/** A unit a plant may enter values in: UCUM code, the kind of quantity, exact factor (and offset) to the kind's base. */
export type MeasureUnit = {
  readonly code: string;
  readonly kind: string;
  readonly factor: Rational;
  readonly offset: Rational;
  /** As people write it: `in`, `psi`. */
  readonly symbol: string;
};

/**
 * The units a plant may enter values in. UCUM codes are copyright Regenstrief Institute and the UCUM
 * Organization, free to use under the UCUM licence. Every factor is built from the exact definitions
 * (1 in = 25.4 mm, 1 lb = 0.453 592 37 kg, g = 9.806 65 m/s2), never from a rounded float.
 */
const exact = (decimal: string): Rational => rationalOf(decimal);
const over = (a: Rational, b: Rational): Rational => ({ num: a.num * b.den, den: a.den * b.num });
const NONE: Rational = { num: 0n, den: 1n };
const ONE: Rational = { num: 1n, den: 1n };

const INCH_M = exact('0.0254');
const FOOT_M = exact('0.3048');
const POUND_KG = exact('0.45359237');
const POUND_FORCE_N = times(POUND_KG, exact('9.80665'));
const INCH_SQUARED_M2 = times(INCH_M, INCH_M);
const FOOT_SQUARED_M2 = times(FOOT_M, FOOT_M);
const FOOT_CUBED_L = times(times(FOOT_SQUARED_M2, FOOT_M), exact('1000'));
/** 231 cubic inches. */
const GALLON_L = times(times(INCH_SQUARED_M2, INCH_M), exact('231000'));

const unit = (kind: string, code: string, symbol: string, factor: Rational = ONE): MeasureUnit => ({
  kind,
  code,
  symbol,
  factor,
  offset: NONE,
});

/** Base units: Pa, mm, m2, V, A, Ohm, s, K, N.m, N, kg, L, L/min, 1, deg, Hz, lx, dB. */
export const plantUnits: readonly MeasureUnit[] = [
  unit('pressure', '[psi]', 'psi', over(POUND_FORCE_N, INCH_SQUARED_M2)),
  unit('pressure', '[lbf_av]/[ft_i]2', 'lbf/ft²', over(POUND_FORCE_N, FOOT_SQUARED_M2)),
  unit('pressure', 'kPa', 'kPa', exact('1000')),
  unit('pressure', 'bar', 'bar', exact('100000')),
  // UCUM gives a metre of water column as 9.80665 kPa and a metre of mercury as 133.3220 kPa.
  unit('pressure', "[in_i'H2O]", 'inH₂O', times(INCH_M, exact('9806.65'))),
  unit('pressure', "[in_i'Hg]", 'inHg', times(INCH_M, exact('133322'))),
  unit('pressure', 'Pa', 'Pa'),
  unit('length', '[in_i]', 'in', exact('25.4')),
  unit('length', '[ft_i]', 'ft', exact('304.8')),
  unit('length', 'mm', 'mm'),
  unit('length', 'cm', 'cm', exact('10')),
  unit('length', 'm', 'm', exact('1000')),
  unit('length', '[mil_i]', 'mil', exact('0.0254')),
  unit('area', '[sft_i]', 'ft²', FOOT_SQUARED_M2),
  unit('area', '[sin_i]', 'in²', INCH_SQUARED_M2),
  unit('area', 'm2', 'm²'),
  unit('voltage', 'V', 'V'),
  unit('voltage', 'mV', 'mV', exact('0.001')),
  unit('voltage', 'kV', 'kV', exact('1000')),
  unit('current', 'A', 'A'),
  unit('current', 'mA', 'mA', exact('0.001')),
  unit('resistance', 'Ohm', 'Ω'),
  unit('resistance', 'kOhm', 'kΩ', exact('1000')),
  unit('resistance', 'MOhm', 'MΩ', exact('1000000')),
  unit('time', 's', 's'),
  unit('time', 'min', 'min', exact('60')),
  unit('time', 'h', 'h', exact('3600')),
  unit('time', 'd', 'd', exact('86400')),
  {
    kind: 'temperature',
    code: '[degF]',
    symbol: '°F',
    factor: { num: 5n, den: 9n },
    offset: { num: 45967n, den: 180n },
  },
  { kind: 'temperature', code: 'Cel', symbol: '°C', factor: ONE, offset: exact('273.15') },
  unit('torque', '[lbf_av].[ft_i]', 'lbf·ft', times(POUND_FORCE_N, FOOT_M)),
  unit('torque', 'N.m', 'N·m'),
  // The same dimension as torque, another quantity: what it takes to puncture a sheet.
  unit('puncture', '[in_i].[lbf_av]', 'in·lbf'),
  unit('force', '[lbf_av]', 'lbf', POUND_FORCE_N),
  unit('force', 'N', 'N'),
  unit('mass', '[lb_av]', 'lb', POUND_KG),
  unit('mass', 'kg', 'kg'),
  unit('volume', '[gal_us]', 'gal', GALLON_L),
  unit('volume', 'L', 'L'),
  unit('volume', '[cft_i]', 'ft³', FOOT_CUBED_L),
  unit('flow', '[cft_i]/min', 'ft³/min', FOOT_CUBED_L),
  unit('flow', '[gal_us]/min', 'gal/min', GALLON_L),
  unit('flow', 'L/min', 'L/min'),
  unit('ratio', '%', '%', exact('0.01')),
  unit('ratio', '[ppm]', 'ppm', exact('0.000001')),
  unit('slope', '[in_i]/[ft_i]', 'in/ft', over(INCH_M, FOOT_M)),
  unit('slope', 'mm/m', 'mm/m', exact('0.001')),
  unit('angle', 'deg', '°'),
  unit('frequency', 'Hz', 'Hz'),
  unit('illuminance', 'lx', 'lx'),
  unit('sound', 'dB', 'dB'),
  unit('count', '1', ''),
  unit('count', '{each}', ''),
  unit('count', '{piece}', ''),
  // Not in UCUM, our own code: one grain per hour, square foot and inch of mercury, as retarders are rated.
  unit('permeance', '[perm_us]', 'perm'),
  // Nor in UCUM, where a degree Fahrenheit stands in no product: heat through a shell, as 24 CFR 3280.506 has it.
  unit('transmittance', '[uo_us]', 'Btu/(h·ft²·°F)'),
];
