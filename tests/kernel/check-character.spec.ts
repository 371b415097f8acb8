import { checkCharacter, withoutCheck } from '@libs/kernel';

/**
 * ISO 7064 MOD 37,36. Published: the GRid identifier A1-2425G-ABC1234002-M (GRid standard of the recording industry), as
 * public doctests have it. The others were computed with two independent implementations that agree: npm cdigit 5.0.1
 * and one written from the definition.
 */
const WORKED = { text: 'A1-2425G-ABC1234002', check: 'M' } as const;
const COMPUTED = [
  ['H26000123', '4'],
  ['H26000123A', 'N'],
  ['H26000123B', 'L'],
  ['L5567', 'L'],
  ['WO8841', 'Y'],
  ['NCR0457', 'K'],
  ['A12425GABC1234002', 'M'],
  ['0', '2'],
  ['Z', '4'],
  ['ABCDEFGHIJKLMNOPQRSTUVWXYZ', '4'],
  ['0123456789', 'R'],
] as const;
const CHARACTERS = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ';

describe('the check character of ISO 7064 MOD 37,36', () => {
  it('is the one of a published identifier', () => {
    expect(checkCharacter(WORKED.text)).toBe(WORKED.check);
    expect(withoutCheck(`${WORKED.text}-${WORKED.check}`)).toBe('A12425GABC1234002');
  });

  it.each(COMPUTED)('of %s is %s, as other implementations have it', (text, check) => {
    expect(checkCharacter(text)).toBe(check);
  });

  it('makes the final sum of the standard come out as 1, whatever the text (ISO 7064, hybrid systems)', () => {
    for (const text of ['H26-1059-A', 'T-500B', '0', 'ZZZZ', 'X26-1-A']) {
      const whole = text.replace(/-/g, '') + (checkCharacter(text) ?? '');
      // As the standard puts it: P(1) = 36; S = P + a, P = 2 * (S mod 36, 36 for 0) mod 37; the last S is 1 mod 36.
      let product = 36;
      let sum = 0;
      for (const character of whole) {
        sum = product + CHARACTERS.indexOf(character);
        product = ((sum % 36 || 36) * 2) % 37;
      }
      expect(sum % 36).toBe(1);
    }
  });

  it('finds every single wrong character of a serial', () => {
    const good = `H261059A${checkCharacter('H261059A') ?? ''}`;
    for (let at = 0; at < good.length; at += 1)
      for (const other of CHARACTERS)
        if (other !== good[at]) {
          const bad = good.slice(0, at) + other + good.slice(at + 1);
          expect(withoutCheck(bad)).toBeUndefined();
        }
  });

  it('has nothing to say of nothing', () => {
    expect(checkCharacter(' - ')).toBeUndefined();
    expect(withoutCheck('A')).toBeUndefined();
  });
});
