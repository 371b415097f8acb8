import fc from 'fast-check';
import { alike, bare, farFrom, mistakes } from '../../apps/web/src/scan/alike';
import { demonstrationRulebook } from '../support/demonstration-rulebook';

const { components, symptoms } = demonstrationRulebook();
const first = (typed: string, from: typeof components): string | undefined => alike(typed, from)[0]?.id;

describe('a search among the plant’s codes', () => {
  it.each([
    ['outlet', 'outlet'],
    ['outlte', 'outlet'],
    ['oulet', 'outlet'],
    ['winow', 'window'],
    ['ventana', 'window'],
    ['vantana', 'window'],
    ['flor strap', 'floor-strap'],
  ])('finds what is meant by “%s”, misspelt or in the other language', (typed, id) => {
    expect(first(typed, components)).toBe(id);
  });

  it('does without accents and capitals', () => {
    for (const { id, name } of [...components, ...symptoms]) {
      const list = components.some((one) => one.id === id) ? components : symptoms;
      expect(alike(bare(name.es).toUpperCase(), list).map((one) => one.id)).toContain(id);
    }
  });

  it('finds nothing where nothing is near', () => {
    expect(alike('zzzzzz', components)).toStrictEqual([]);
  });

  // Damerau (1964) counts these four as one error each, and found that four in five misspellings are one of them.
  it('counts a letter put in, left out, changed or swapped as one mistake', () => {
    expect(['tapee', 'tpe', 'tabe', 'atpe'].map((typed) => mistakes(typed, 'tape'))).toStrictEqual([
      1, 1, 1, 1,
    ]);
  });

  it('is as far one way as the other, and never nearer than the lengths differ', () => {
    const word = fc.string({ maxLength: 8 });
    fc.assert(
      fc.property(word, word, (one, other) => {
        expect(mistakes(one, other)).toBe(mistakes(other, one));
        expect(mistakes(one, other)).toBeGreaterThanOrEqual(Math.abs(one.length - other.length));
        expect(mistakes(one, one)).toBe(0);
      }),
    );
  });

  it('puts an exact name before a near one', () => {
    expect(farFrom('deck', 'deck')).toBe(0);
    expect(first('deck', components)).toBe('deck');
  });
});
