import { compare, converted, inBase, measureUnit, measureUnits, rationalOf, sameKind } from '@libs/kernel';

const exactly = (decimal: string) => ({
  asymmetricMatch: (other: unknown) => isRational(other) && compare(other, rationalOf(decimal)) === 0,
});
const isRational = (value: unknown): value is { num: bigint; den: bigint } =>
  typeof value === 'object' && value !== null && 'num' in value && 'den' in value;

describe('the units of the plant', () => {
  it('turn an inch into exactly 25.4 millimetres', () => {
    expect(converted('1', '[in_i]', 'mm')).toEqual(exactly('25.4'));
    expect(converted('25.4', 'mm', '[in_i]')).toEqual(exactly('1'));
  });

  it('keep a third of a yard exact: one foot is twelve inches, whichever way round', () => {
    expect(converted('1', '[ft_i]', '[in_i]')).toEqual(exactly('12'));
    expect(converted('4', '[in_i]', '[ft_i]')).toEqual({ num: 1n, den: 3n });
  });

  it('shift temperatures as well as scale them', () => {
    expect(converted('212', '[degF]', 'Cel')).toEqual(exactly('100'));
    expect(converted('-40', 'Cel', '[degF]')).toEqual(exactly('-40'));
  });

  it('hold a gallon to be 231 cubic inches', () => {
    expect(inBase('1', '[gal_us]')).toEqual(exactly('3.785411784'));
  });

  it('take a quarter inch of fall in a foot for what it is in metric', () => {
    expect(converted('0.25', '[in_i]/[ft_i]', 'mm/m')).toEqual({ num: 125n, den: 6n });
  });

  it('refuse to tell a pressure as a length', () => {
    expect(converted('1', '[psi]', '[in_i]')).toBeUndefined();
    expect(sameKind('[psi]', '[in_i]')).toBe(false);
  });

  it('keep the work of puncturing a sheet apart from a torque of the same dimension', () => {
    expect(sameKind('[in_i].[lbf_av]', '[lbf_av].[ft_i]')).toBe(false);
  });

  it('know nothing of what is no unit of a plant, or no decimal', () => {
    expect(measureUnit('furlong')).toBeUndefined();
    expect(inBase('1', 'ft')).toBeUndefined();
    expect(inBase('1e3', 'mm')).toBeUndefined();
    expect(inBase('1,5', 'mm')).toBeUndefined();
  });

  it('have each code once', () => {
    const codes = measureUnits().map(({ code }) => code);
    expect(new Set(codes).size).toBe(codes.length);
  });
});
