import { compare, inchesAsDecimal, inchesAsFraction, isDecimal, rationalOf } from '@libs/kernel';
import fc from 'fast-check';

describe('inches as people write them', () => {
  it.each([
    ['36-1/2', '36.5'],
    ['36 1/2', '36.5'],
    ['36 - 1/2', '36.5'],
    ['36 1/2"', '36.5'],
    ['36.5 in', '36.5'],
    ['1/64', '0.015625'],
    ['-3/8', '-0.375'],
    ['  7/16  ', '0.4375'],
    ['12', '12'],
    ['0 3/4', '0.75'],
    ['6 0/2', '6'],
  ])('reads %s as %s', (typed, decimal) => {
    expect(inchesAsDecimal(typed)).toBe(decimal);
  });

  it.each(['', '1/3', '36-1/0', '36 5/4', '36 1', '1/2/4', 'abc', '36,5', '5 / 8 x', '1e2', '.5'])(
    'does not guess what %p might mean',
    (typed) => {
      expect(inchesAsDecimal(typed)).toBeUndefined();
    },
  );

  it.each([
    ['36.5', '36 1/2'],
    ['0.375', '3/8'],
    ['-0.375', '-3/8'],
    ['12', '12'],
    ['12.0', '12.0'],
    ['1.3', '1.3'],
    ['0.0625', '1/16'],
  ])('shows %s as %s', (decimal, shown) => {
    expect(inchesAsFraction(decimal)).toBe(shown);
  });

  it('reads back as the same length whatever a tape can show', () => {
    fc.assert(
      fc.property(fc.integer({ min: -64_000, max: 64_000 }), (sixtyFourths) => {
        const decimal = inchesAsDecimal(tape(sixtyFourths)) ?? '';
        expect(isDecimal(decimal)).toBe(true);
        expect(compare(rationalOf(decimal), { num: BigInt(sixtyFourths), den: 64n })).toBe(0);
        const again = inchesAsDecimal(inchesAsFraction(decimal)) ?? '';
        expect(compare(rationalOf(again), rationalOf(decimal))).toBe(0);
      }),
    );
  });
});

const tape = (sixtyFourths: number): string => {
  const size = Math.abs(sixtyFourths);
  return `${sixtyFourths < 0 ? '-' : ''}${Math.floor(size / 64)}-${size % 64}/64`;
};
