import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Finding, Rule } from '@libs/judge';
import { RULES } from '@libs/judge';
import type { Names } from '@libs/contracts';
import {
  defectSays,
  en,
  es,
  eventSays,
  findingSays,
  holdSays,
  knowingDefects,
  namesFrom,
  spokenEvents,
} from '@libs/contracts';
import { demonstrationRulebook, planOf } from '../support/demonstration-rulebook';

const rulebook = demonstrationRulebook();
const plan = planOf(rulebook);
const names: Names = namesFrom(
  rulebook,
  (operation, id) =>
    plan.operations[operation]?.values.find(({ characteristic }) => characteristic === id)?.label,
);

const english = new Map<string, string>(Object.entries(en));
const spanish = new Map<string, string>(Object.entries(es));
const placeholders = (sentence = ''): readonly string[] => [...(sentence.match(/\{\w+\}/g) ?? [])].sort();

describe('The two catalogues', () => {
  test('say the same things: every key of one is a key of the other', () => {
    expect([...spanish.keys()].sort()).toEqual([...english.keys()].sort());
  });

  test.each([...english.keys()])('fill in the same names: %s', (key) => {
    expect(placeholders(spanish.get(key))).toEqual(placeholders(english.get(key)));
    expect(spanish.get(key)?.trim()).not.toBe('');
  });

  test('call nothing an error, and tell nobody to start or repeat a test', () => {
    const says = [...english.values(), ...spanish.values()].join('\n');
    expect(says).not.toMatch(/\b(?:error|invalid|oops|failed|inválid[oa]|fall[óo])\b/i);
    expect(says).not.toMatch(
      /\b(?:start|begin|repeat|retest|test) (?:it|the test|again)\b|repita|pruebe otra vez/i,
    );
  });
});

const finding = (rule: Rule, more: Partial<Finding> = {}): Finding => ({
  rule,
  grade: 'refuse',
  class: 'record',
  operation: 'wire-protected',
  station: 'rough-in',
  entry: 'drywalled',
  source: { kind: 'published', reference: 'NEC 300.4(A)(2)', row: 'covers.csv:24' },
  ...more,
});

const value = { characteristic: 'sleeves', required: '"yes"', recorded: 'no' };
const noted = { kind: 'practice', reference: '', row: '' } as const;

/** What the judge and the record put into a finding of each rule, at its fullest. */
const TOLD: { readonly [rule in Rule]: Partial<Finding> } = {
  'cover-hides-unproven': { characteristic: 'sleeves', required: '"yes"' },
  'cover-hides-defect': { recorded: 'branch-wire pierced', places: ['kitchen'], defect: 'd-1' },
  'required-work-unproven': { places: ['kitchen', 'bath-1'] },
  'expected-work-unproven': { source: noted },
  'value-out-of-limits': { ...value, places: ['kitchen'] },
  'value-missing': { characteristic: 'sleeves', required: '"yes"' },
  'value-of-wrong-kind': { ...value, recorded: '7' },
  'relation-not-met': { characteristic: 'sleeves', recorded: 'sleeves 3 [in_i] 3.5 [in_i], plate-kind 2' },
  'too-soon-after': { characteristic: 'wired', required: '>= 12', recorded: '3.5', unit: 'h' },
  'too-long-after': { required: '<= 30', recorded: '31', unit: 'd' },
  'operation-not-planned': { station: null, source: { kind: 'design', reference: 'revision 3', row: '' } },
  'operation-unknown': { operation: 'roof-lifted', station: null },
  'worked-elsewhere': { required: 'rough-in', recorded: 'trim-out', source: noted },
  'signed-by-own-crew': { required: 'wired', recorded: 'crew:electrical', source: noted },
  'signer-not-qualified': { required: 'crew:quality role:quality-manager', recorded: 'crew:electrical' },
  'seen-after-cover': { recorded: 'drywalled' },
  'recorded-under-cover': { recorded: 'drywalled' },
  'photo-missing': { source: noted },
  'lot-missing': { required: 'protector-plate', source: noted },
  'lot-not-usable': { required: 'protector-plate', recorded: 'PP-17', source: noted },
  'instrument-missing': { required: 'gas-gauge', recorded: 'manometer', source: noted },
  'instrument-not-usable': { required: 'gas-gauge', recorded: 'GG-2', source: noted },
  'instrument-due-soon': { required: '2026-12-01', recorded: 'GG-2', source: noted },
  'qualification-expired': { required: 'crew:quality', recorded: '2026-11-01', source: noted },
  'qualification-due-soon': { required: 'role:inspector', recorded: '2026-12-01', source: noted },
  'destination-outside-zones': {
    characteristic: 'wind',
    required: 'III',
    recorded: 'I',
    places: ['Quillmere County'],
    station: null,
  },
  held: { characteristic: 'sleeves', recorded: 'value-missing', hold: 'h-1', source: noted },
  'defect-open': { recorded: 'wire-protected value-out-of-limits', defect: 'd-1', source: noted },
  'left-with-open-work': { source: noted },
  'station-skipped': { source: noted },
  'shipped-already': { source: noted },
  'stage-not-seen': {},
  'test-not-recent': { recorded: 'wired' },
};

describe('A finding in words', () => {
  test.each(RULES)('%s says what is and what to do, in both languages, with every name filled in', (rule) => {
    const full = finding(rule, TOLD[rule]);
    const { entry: _, ...alone } = full;
    for (const { en: says, es: dice } of [full, alone].map((one) => findingSays(one, names))) {
      expect(says).toMatch(/^[“A-Z].+\.(?: \(.+\))?$/s);
      expect(dice).toMatch(/^[“A-ZÁÉÍÓÚ].+\.(?: \(.+\))?$/s);
      expect(`${says} ${dice}`).not.toMatch(/[{}]|undefined|null|: *[,.:]|““|””|“”|\[in_i\]| {2}/);
      expect(`${says} ${dice}`).not.toMatch(/wire-protected|bath-1|rough-in|crew:|role:|-unproven|-limits/);
      expect(dice).not.toBe(says);
    }
  });

  test('a cover over notches with no plates names both operations, the one way out and the section of the code', () => {
    expect(findingSays(finding('cover-hides-unproven', { places: ['kitchen'] }), names)).toEqual({
      en: '“Drywalled” covers “Plates and sleeves on” (kitchen), and nothing proves it yet. Once it is done, record it. (NEC 300.4(A)(2))',
      es: '“Tablaroca puesta” tapa “Placas y mangas de protección puestas” (cocina) y todavía nada lo comprueba. Cuando esté hecho, anótelo. (NEC 300.4(A)(2))',
    });
  });

  test('a value out of limits shows what was recorded beside what is required, in inches as on a tape', () => {
    const wide = finding('value-out-of-limits', {
      operation: 'floor-lagged',
      station: 'site',
      characteristic: 'side-spacing',
      required: '<= 36',
      recorded: '36.5',
      unit: '[in_i]',
      source: { kind: 'practice', reference: 'common practice, no published source', row: 'values.csv:160' },
    });
    expect(findingSays(wide, names).en).toBe(
      'Spacing on each side, largest, of “Floors lagged together”: recorded 36-1/2 in, required at most 36 in. Have it put right and verified, or correct the entry if it was written down wrong. (common practice, no published source)',
    );
  });

  test('a relation names the readings it was worked out from', () => {
    const leaked = finding('relation-not-met', {
      operation: 'gas-piping-tested',
      station: 'test',
      characteristic: 'drop',
      required: 'start-pressure - end-pressure = 0',
      recorded: 'start-pressure 3.2 [psi], end-pressure 3.0 [psi]',
    });
    expect(findingSays(leaked, names).en).toContain(': Start pressure 3.2 psi, End pressure 3.0 psi.');
  });

  test('a reading that others are compared with is missed by its own name, with no formula', () => {
    const part = finding('value-missing', {
      operation: 'floor-piped',
      station: 'floor',
      characteristic: 'hole-joist-depth',
      required: '3 * hole <= hole-joist-depth',
    });
    expect(findingSays(part, names).en).toMatch(
      /^Depth of the joist with that hole, of .+: not recorded, and the other/,
    );
    expect(findingSays(part, names).en).not.toContain('<=');
  });

  test('who may sign is said by crew and by role, not by code', () => {
    const signed = finding('signer-not-qualified', { required: 'crew:quality role:quality-manager' });
    expect(findingSays(signed, names).en).toContain('it is for: the Quality crew or the quality manager');
  });
});

describe('An event in words', () => {
  const recorded = [
    ...readFileSync(join(__dirname, '..', '..', 'libs', 'record', 'src', 'EVENTS.md'), 'utf8').matchAll(
      /^## (\w+)\n\n\*(\w+)/gm,
    ),
  ]
    // Accesses stand in a ledger of their own, and are said by the one screen that shows them.
    .filter(([, , kind]) => kind !== 'account')
    .map(([, name = '']) => name);

  test('every event the record can hold has words', () => {
    expect(recorded.length).toBeGreaterThan(30);
    expect(recorded.filter((type) => !spokenEvents.includes(type))).toEqual([]);
    expect(spokenEvents.filter((type) => !recorded.includes(type))).toEqual([]);
  });

  test.each(recorded)(
    '%s is said even when half its fields are missing, as in a history from elsewhere',
    (type) => {
      const { en: says, es: dice } = eventSays(type, { serial: 'Q-1' }, names);
      expect(`${says}${dice}`).not.toMatch(/[{}]|undefined|null/);
      expect(says).toMatch(/\S/);
    },
  );

  test('work done except at a place says so', () => {
    const wired = { serial: 'Q-1', operation: 'wired', proof: 'signed', except: ['kitchen'], missing: [] };
    expect(eventSays('WorkRecorded', wired, names)).toEqual({
      en: 'Wired, panel set. Except: kitchen.',
      es: 'Cableada, panel colocado. Salvo: cocina.',
    });
  });

  test('a move says what is carried along', () => {
    const moved = { from: 'rough-in', to: 'roof-set', open: ['wired', 'walls-piped'], shortages: [] };
    expect(eventSays('SectionMoved', moved, names).en).toBe(
      'Moved from Rough-in to Roof set; 2 open operations carried along: Wired, panel set; Plumbing run in walls.',
    );
  });

  test('a refused asking gives the first reason whole and counts the others', () => {
    const refused = {
      operation: 'drywalled',
      except: [],
      findings: [
        finding('cover-hides-unproven'),
        finding('required-work-unproven', { operation: 'insulation-inspected' }),
      ],
    };
    const { en: says } = eventSays('AskingRefused', refused, names);
    expect(says).toMatch(
      /^Asked: may we go on to “Drywalled”\? Refused: “Drywalled” covers “Plates and sleeves on”/,
    );
    expect(says).toMatch(/1 thing to note\.$/);
  });

  test('rework says on which defect, where the history it stands in knows it', () => {
    const rework = { serial: 'Q-1', defect: 'd-1', crew: 'electrical' };
    expect(eventSays('ReworkDone', rework, names).en).toBe('Rework done by Electrical.');
    const recorded = { defect: 'd-1', component: 'outlet', symptom: 'loose', place: null };
    const knowing = knowingDefects(names, [{ type: 'DefectRecorded', data: recorded }]);
    expect(eventSays('ReworkDone', rework, knowing).es).toBe(
      'Reparación hecha por Electricidad (Contacto: suelto).',
    );
  });

  test('a type that came later is shown by its name', () => {
    expect(eventSays('RoofLifted', {}, names).en).toBe('Roof lifted.');
  });
});

describe('Holds and defects in words', () => {
  test('a hold by a rule says why and the way out', () => {
    const hold = {
      reason: 'value-out-of-limits',
      operation: 'floor-strapped',
      characteristic: 'nails-above',
      defect: 'd-1',
    };
    expect(holdSays(hold, names).en).toBe(
      'Held: Nails above the floor line, fewest, of “Walls strapped to floor”, is out of limits. Have it reworked, and verified by someone else.',
    );
  });

  test('a hold for what the record is short of says that recording it is the way out', () => {
    const hold = { reason: 'value-missing', operation: 'decked', characteristic: null, defect: null };
    expect(holdSays(hold, names).en).toBe(
      'Held: a value of “Floor decked” is not recorded. Record what is missing.',
    );
  });

  test("a hold by hand gives the plant's own reason", () => {
    const hold = { reason: 'agency', operation: null, characteristic: null, defect: null };
    expect(holdSays(hold, names).en).toBe(
      'Held: the inspection agency asked for it. Ask the quality manager.',
    );
  });

  test('a defect is one phrase: part, symptom, place', () => {
    expect(defectSays({ component: 'outlet', symptom: 'loose', place: 'kitchen' }, names)).toEqual({
      en: 'Outlet: loose (kitchen)',
      es: 'Contacto: suelto (cocina)',
    });
  });

  test('a defect a rule opened speaks of the operation, since no part was named', () => {
    const opened = { component: 'walls-insulated', symptom: 'value-out-of-limits', place: null };
    expect(defectSays(opened, names).en).toBe('a value of “Insulated” is out of limits');
  });
});
