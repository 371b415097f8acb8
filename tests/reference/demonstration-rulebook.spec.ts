import { parse } from 'csv-parse/sync';
import type { CompiledPlan, Design, Entry, Finding } from '@libs/judge';
import { judgeWork } from '@libs/judge';
import {
  demonstrationRulebook,
  demonstrationRulebookFiles,
  homePlanOf,
  planOf,
} from '../support/demonstration-rulebook';

const rulebook = demonstrationRulebook();
const files = demonstrationRulebookFiles();

type Row = { readonly [column: string]: string };
const tableOf = (name: string): readonly Row[] => parse(files[name] ?? '', { columns: true });

const atSite = ({ operations }: CompiledPlan): readonly string[] =>
  Object.values(operations)
    .filter(({ scope }) => scope === 'home')
    .map(({ id }) => id);
const inPlant = (plan: CompiledPlan): readonly string[] =>
  Object.keys(plan.operations).filter((id) => !atSite(plan).includes(id));

/** Counts from the floor's own table of operations: common practice, no published source. */
describe('A design brings the operations it needs, and no others', () => {
  const single: Design = { sections: '1', fuel: 'none', pan: 'one-piece', sheathing: 'no' };
  const dry: Design = { role: 'dry', pan: 'none', sheathing: 'no' };
  test.each<readonly [string, Design, number, number]>([
    ['the wet half of a sheathed gas double with a site-built pan', {}, 69, 10],
    ['an all-electric single', single, 62, 4],
    ['a dry half', dry, 55, 10],
    ['a dry half that is sheathed', { ...dry, sheathing: 'yes' }, 56, 10],
  ])('%s has its own count', (_, design, plant, site) => {
    const plan = planOf(rulebook, design);
    expect({ plant: inPlant(plan).length, site: atSite(plan).length }).toEqual({ plant, site });
  });

  test('a home at its site has the work of the site and nothing else', () => {
    expect(homePlanOf(rulebook).order).toHaveLength(10);
    expect(homePlanOf(rulebook, { sections: '1' }).order).toHaveLength(4);
  });

  test('about eight inspections a section are signed by someone not of the crew', () => {
    expect(Object.values(planOf(rulebook).operations).filter(({ entry }) => entry === 'I')).toHaveLength(8);
  });
});

describe('Every row says on whose authority it stands', () => {
  const rows = [...tableOf('values.csv'), ...tableOf('covers.csv')];

  test('published rows name a section, practice rows say that none is published', () => {
    for (const { source_kind: kind, source = '' } of rows) {
      if (kind === 'published') expect(source).toMatch(/^(?:24 CFR 328\d\.\d+|NEC 300\.4)/);
      if (kind === 'practice') expect(source).toBe('common practice, no published source');
      if (kind === 'memory') expect(source).toMatch(/^from memory, not seen: .+/);
      if (kind === 'design') expect(source).toMatch(/^approved design|invented/);
    }
  });

  test('what is from memory is switched off, and reaches no plan', () => {
    const memory = tableOf('values.csv').filter(({ source_kind: kind }) => kind === 'memory');
    expect(memory.map(({ operation, characteristic }) => `${operation} ${characteristic}`)).toEqual([
      'floor-piped drain-fall',
      'wired lugs',
      'wire-protected plate-16-gauge',
      'drywalled board-thickness',
      'furnace-set duct-static',
    ]);
    expect(memory.every(({ on }) => on === 'no')).toBe(true);
    const kinds = Object.values(planOf(rulebook).operations).flatMap(({ values }) =>
      values.map(({ source }) => source.kind),
    );
    expect(kinds).not.toContain('memory');
  });
});

describe('Areas, ratios and thirds are compared by their parts, so that rounding refuses nobody', () => {
  const plan = planOf(rulebook);
  const unmet = (
    operation: string,
    values: Readonly<Record<string, string>>,
    unit: string,
  ): readonly string[] => {
    const entry: Entry = {
      operation,
      proof: 'signed',
      except: [],
      values: Object.entries(values).map(([characteristic, value]) => ({
        characteristic,
        value,
        unit: characteristic === 'floor-area' ? '[sft_i]' : unit,
      })),
      lots: [],
      instrument: null,
      photos: [],
      signer: { actor: 'p-1', crew: null, roles: [] },
      station: null,
      occurredAt: '2026-03-02T08:00:00.000-06:00',
    };
    const findings: readonly Finding[] = judgeWork(plan, { work: {}, defects: [], holds: [] }, entry);
    return findings.flatMap(({ rule, characteristic }) =>
      rule === 'relation-not-met' ? (characteristic ?? []) : [],
    );
  };
  const joist = (part: string, cut: string, depth: string): readonly string[] =>
    unmet('floor-piped', { [part]: cut, [`${part}-joist-depth`]: depth }, '[in_i]');

  test('24 CFR 3280.305(g)(5): a hole of a third of the joist depth is met, one a hair larger is not', () => {
    expect(joist('hole', '2.5', '7.5')).toEqual([]);
    expect(joist('hole', '2.5001', '7.5')).toEqual(['hole-third']);
  });

  test('24 CFR 3280.305(g)(5): an end notch of a quarter is met, another notch only at a sixth', () => {
    expect(joist('end-notch', '1.8125', '7.25')).toEqual([]);
    expect(joist('end-notch', '1.875', '7.25')).toEqual(['end-notch-quarter']);
    expect(joist('other-notch', '1.25', '7.5')).toEqual([]);
    expect(joist('other-notch', '1.3125', '7.5')).toEqual(['other-notch-sixth']);
  });

  // 1/300 of 1,500 sq ft is 5 sq ft, which is 720 sq in; half of it is 360, 40 % is 288.
  const vents = (area: string, high: string, low: string): readonly string[] =>
    unmet(
      'underlaid',
      { 'vent-area': area, 'high-vent-area': high, 'low-vent-area': low, 'floor-area': '1500' },
      '[sin_i]',
    );

  test('24 CFR 3280.504(d): vents of 1/300 of the floor, half high and 40 % low, are met to the square inch', () => {
    expect(vents('720', '360', '288')).toEqual([]);
    expect(vents('719', '360', '288')).toEqual(['vent-ratio']);
    expect(vents('720', '359', '288')).toEqual(['high-share']);
    expect(vents('720', '360', '287')).toEqual(['low-share']);
  });

  test('24 CFR 3280.705(l)(8)(i): no drop at all, at the resolution of the gauge', () => {
    const gas = (end: string): readonly string[] =>
      unmet('gas-piping-tested', { 'start-pressure': '3.2', 'end-pressure': end }, '[psi]');
    expect(gas('3.20')).toEqual([]);
    expect(gas('3.1')).toEqual(['drop']);
  });
});

describe('Two ways of building are two sets of rows, not two programs (common practice, no published source)', () => {
  const hidden = (plan: CompiledPlan, cover: string): readonly string[] =>
    (plan.operations[cover]?.hides ?? []).map(({ operation }) => operation).sort();
  const cavity = ['joints-sealed', 'walls-insulated', 'walls-piped', 'wire-protected', 'wired'];

  test('boarded on the line, drywall hides the cavity and the wrap does not', () => {
    const plan = planOf(rulebook, { wall_board: 'on-line' });
    expect(plan.operations['drywalled']?.station).toBe('drywall');
    expect(hidden(plan, 'drywalled')).toEqual(expect.arrayContaining(cavity));
    expect(hidden(plan, 'wrapped')).toEqual(['floor-strapped', 'roof-strapped', 'sheathed']);
  });

  test('boarded at the wall table, drywall hides nothing and the wrap hides the cavity', () => {
    const plan = planOf(rulebook, { wall_board: 'at-table' });
    expect(plan.operations['drywalled']).toMatchObject({ station: 'wall-shop', hides: [], requires: [] });
    expect(hidden(plan, 'wrapped')).toEqual(expect.arrayContaining(cavity));
    const { order } = plan;
    expect(order.indexOf('drywalled')).toBeLessThan(order.indexOf('walls-set'));
    expect(order.indexOf('insulation-inspected')).toBeLessThan(order.indexOf('wrapped'));
  });

  test('this plant closes a wall with one board: what it hides needs no second face', () => {
    const second = planOf(rulebook).operations['drywalled']?.hides.filter(
      ({ hidden: when }) => when === 'second',
    );
    expect(second?.length).toBeGreaterThan(0);
    expect(second?.every(({ otherFace }) => otherFace.length === 0)).toBe(true);
  });

  test('overhead ducts are run at the roof jig and lie under the attic insulation', () => {
    const plan = planOf(rulebook, { duct: 'overhead' });
    expect(plan.operations['ducts-run']?.station).toBe('roof-shop');
    expect(hidden(plan, 'attic-insulated')).toContain('ducts-run');
    expect(hidden(plan, 'decked')).not.toContain('ducts-run');
  });

  test('uplift by sheathing has no straps, and its fastening schedule lies under the wrap', () => {
    const plan = planOf(rulebook, { uplift: 'sheathing', sheathing_schedule: 'S-9' });
    expect(Object.keys(plan.operations)).not.toEqual(expect.arrayContaining(['floor-strapped']));
    expect(hidden(plan, 'wrapped')).toEqual(['sheathed']);
    expect(plan.operations['sheathed']?.values.map(({ required }) => required)).toContain('"S-9"');
  });

  test('a gasket shipped loose is set by the installer at the site', () => {
    const home = homePlanOf(rulebook, { gasket: 'loose' });
    expect(home.operations['gasket-set']).toMatchObject({
      station: 'site',
      crew: 'installer',
      scope: 'home',
    });
    expect(hidden(home, 'mate-line-closed')).toContain('gasket-set');
  });
});

describe('Where people can get hurt', () => {
  const operations = Object.values(planOf(rulebook, { dwv_test: 'air' }).operations).concat(
    Object.values(planOf(rulebook).operations),
  );

  test('every test, and lifting, falls, loads and jacking, has a caution in both languages', () => {
    const risky = ['roof-set', 'roof-decked', 'underlaid', 'shingled', 'gear-fitted', 'braced', 'site-set'];
    const cautioned = operations.filter(({ entry, id }) => entry === 'T' || risky.includes(id));
    expect(cautioned.length).toBeGreaterThan(risky.length + 8);
    for (const { caution } of cautioned) {
      expect(caution?.en).toMatch(/approved (?:procedure|instructions)/);
      expect(caution?.es).toMatch(/(?:procedimiento aprobado|instrucciones aprobadas)/);
    }
  });

  test('no caution tells anyone to start or repeat a test, or gives a lifting limit', () => {
    const says = operations.map(({ caution }) => `${caution?.en ?? ''} ${caution?.es ?? ''}`).join('\n');
    expect(says).not.toMatch(/\b(?:start the|begin the|repeat|retest|inicie|repita)\b/i);
    expect(says).not.toMatch(/\d+ *(?:lb|ton|kg|psi|V)\b/);
  });

  test('inspections and tests are signed by quality or its manager, at the site by the installer too', () => {
    for (const { entry, signers, station } of operations) {
      if (entry !== 'I' && entry !== 'T') continue;
      expect(signers).toContain('role:quality-manager');
      expect(signers).toContain(station === 'site' ? 'crew:installer' : 'crew:quality');
    }
  });

  test('files that show limits say what governs', () => {
    const governing =
      'Follow the approved design, the quality assurance manual, the inspection agencies and local codes; this record does not replace them.';
    const yaml = Object.entries(files).filter(([name]) => name.endsWith('.yaml'));
    expect(yaml.length).toBeGreaterThan(5);
    for (const [, text] of yaml) expect(text).toContain(governing);
  });
});
