import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const TOKENS = readFileSync(join(__dirname, '../../apps/web/src/look/tokens.css'), 'utf8');

const rolesIn = (selector: string): ReadonlyMap<string, string> => {
  const block = TOKENS.slice(TOKENS.indexOf(selector)).split('}')[0] ?? '';
  return new Map(
    [...block.matchAll(/--([a-z-]+): (#[0-9a-f]{6});/g)].map(([, name = '', colour = '']) => [name, colour]),
  );
};

/** Relative luminance and contrast ratio: WCAG 2.2, "relative luminance" and "contrast ratio" in its glossary. */
const luminance = (colour: string): number => {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const channel = parseInt(colour.slice(at, at + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
};
const contrast = (one: string, other: string): number => {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
};

const TEXT_ON_PAPER = ['ink', 'quiet', 'chalk', 'proven', 'due', 'refused', 'hold'];
const PAPERS = ['paper', 'paper-raised', 'paper-sunk'];
const WASHES = ['chalk-wash', 'proven-wash', 'due-wash', 'refused-wash', 'hold-wash'];
const PAIRS: readonly (readonly [string, string, number])[] = [
  // 1.4.3 Contrast (Minimum), AA: text 4.5:1.
  ...TEXT_ON_PAPER.flatMap((text) => PAPERS.map((paper) => [text, paper, 4.5] as const)),
  ...['ink', 'quiet'].flatMap((text) => WASHES.map((wash) => [text, wash, 4.5] as const)),
  ...['chalk', 'proven', 'due', 'refused', 'hold'].map((role) => [role, `${role}-wash`, 4.5] as const),
  ['chalk-ink', 'chalk', 4.5],
  ['paper', 'ink', 4.5],
  // 1.4.11 Non-text Contrast, AA: what shows where a control is, 3:1.
  ...PAPERS.map((paper) => ['edge', paper, 3] as const),
];

describe.each([
  ['light', ':root {'],
  ['dark', ":root:not([data-theme='light'])"],
  ['dark by choice', ":root[data-theme='dark']"],
])('the colours of the %s screens', (_name, selector) => {
  const roles = rolesIn(selector);
  it.each(PAIRS)('%s can be read on %s (WCAG 2.2, at least %s to 1)', (front, back, least) => {
    expect(contrast(roles.get(front) ?? '', roles.get(back) ?? '')).toBeGreaterThanOrEqual(least);
  });
});

describe('the contrast ratio itself', () => {
  it('is 21 to 1 for black on white, and 7.0 for #595959 (WCAG 2.2; project reference 7)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#595959', '#ffffff')).toBeCloseTo(7.0, 1);
  });
});
