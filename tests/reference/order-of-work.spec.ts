import type { CompiledPlan, Design } from '@libs/judge';
import { demonstrationRulebook, planOf } from '../support/demonstration-rulebook';

/**
 * The order of work that the texts state (24 CFR 3280.612, .705, .810, 3282.362, 3285.702 to .804, NEC 300.4), as
 * hard edges and covers of the demonstration rulebook. All other order there is common practice, no published
 * source, and only noted.
 */
const rulebook = demonstrationRulebook();

type Stated = readonly [section: string, first: string, then: string, design: Design];

const requires = ({ operations }: CompiledPlan, then: string, first: string): string | undefined =>
  operations[then]?.requires.find(({ operation }) => operation === first)?.source.reference;

const hides = ({ operations }: CompiledPlan, then: string, first: string): string | undefined =>
  operations[then]?.hides.find(
    ({ operation, hidden, grade }) => operation === first && hidden === 'any' && grade === 'refuse',
  )?.source.reference;

describe('Work that a text puts first is required', () => {
  const stated: readonly Stated[] = [
    ['3280.612(b)(1)', 'drains-tested-open', 'plumbing-trimmed', { dwv_test: 'water' }],
    ['3280.612(b)(2)', 'plumbing-trimmed', 'drains-tested-set', { dwv_test: 'air' }],
    ['3280.612(b)(2)-(3)', 'plumbing-trimmed', 'drains-tested-set', { dwv_test: 'flood' }],
    ['3280.612(c)', 'plumbing-trimmed', 'fixtures-tested', {}],
    ['3280.705(l)(8)(i)', 'gas-piping-tested', 'appliances-connected', {}],
    ['3280.705(l)(8)(ii)', 'appliances-connected', 'gas-appliances-tested', {}],
    ['3280.810(a)', 'wired', 'dielectric-tested', {}],
    ['3280.810(a)', 'electric-trimmed', 'dielectric-tested', {}],
    ['3280.810(a)', 'appliances-connected', 'dielectric-tested', {}],
    ['3282.362(c)', 'final-inspected', 'labelled', {}],
    ['3282.362(c)', 'sided', 'labelled', {}],
    ['3285.702', 'crossovers-joined', 'site-tested', {}],
  ];

  test.each(stated)('%s: %s, then %s', (section, first, then, design) => {
    expect(requires(planOf(rulebook, design), then, first)).toContain(section);
  });
});

describe('Work that a text wants seen before it is closed up is a cover that is refused', () => {
  const stated: readonly Stated[] = [
    ['NEC 300.4(A)(2)', 'wire-protected', 'drywalled', {}],
    ['NEC 300.4(A)(2)', 'wire-protected', 'wrapped', { wall_board: 'at-table' }],
    ['3280.612(d)', 'pan-tested', 'drywalled', {}],
    ['3285.801', 'gasket-set', 'mate-line-closed', {}],
    ['3285.801', 'gasket-set', 'mate-line-closed', { gasket: 'loose' }],
  ];

  test.each(stated)('%s: %s, then %s', (section, first, then, design) => {
    expect(hides(planOf(rulebook, design), then, first)).toContain(section);
  });
});

describe('Work that a text puts first within one operation is a value that is refused', () => {
  test.each([
    ['3285.801(c)', 'end-walls-closed', 'sheeting-removed'],
    ['3285.804(a)', 'crossovers-joined', 'insulation-replaced'],
  ])('%s: %s asks for %s', (section, operation, characteristic) => {
    const value = planOf(rulebook).operations[operation]?.values.find(
      (one) => one.characteristic === characteristic,
    );
    expect(value).toMatchObject({ grade: 'refuse', required: '"yes"' });
    expect(value?.source.reference).toContain(section);
  });
});

test('3282.362(c): the label operation affixes the label, and stops for every hold', () => {
  expect(planOf(rulebook).operations['labelled']).toMatchObject({ label: true, gate: true });
});

test('every inspection before a cover is a gate (common practice, no published source)', () => {
  const inspections = Object.values(planOf(rulebook).operations).filter(({ entry }) => entry === 'I');
  expect(inspections.map(({ id }) => id)).toEqual(
    expect.arrayContaining([
      'floor-inspected',
      'rough-in-inspected',
      'roof-inspected',
      'sides-inspected',
      'insulation-inspected',
      'final-inspected',
      'labelled',
      'road-checked',
    ]),
  );
  expect(inspections.filter(({ gate }) => !gate)).toEqual([]);
});
