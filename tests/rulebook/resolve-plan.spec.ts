import { canonicalJson } from '@libs/kernel';
import { openRulebook, resolvePlan } from '@libs/rulebook';
import { changed, DESIGN, read, resolved, sha256Hex, SMALL } from '../support/small-rulebook';

const O = 'operations.yaml';
const problems = (design: { readonly [name: string]: string }, files = SMALL) => {
  const answer = resolvePlan(read(files), 1, design, sha256Hex);
  return answer.ok ? [] : answer.problems;
};
const requiredBy = (id: string, design = DESIGN, files = SMALL) =>
  resolved(files, design).operations[id]?.requires.map(({ operation }) => operation);

describe('a build plan', () => {
  it('has the operations that apply to the design, and none that do not', () => {
    expect(resolved().order).toContain('piped');
    expect(resolved(SMALL, { ...DESIGN, role: 'dry' }).order).not.toContain('piped');
    expect(resolved(SMALL, { ...DESIGN, sections: '1' }).order).not.toContain('joined');
  });

  it('drops what does not apply from what is required, expected and hidden: it counts as met', () => {
    const dry = resolved(SMALL, { ...DESIGN, role: 'dry' }).operations['boarded'];
    expect(dry?.hides.map(({ operation }) => operation)).toStrictEqual(['wired']);
  });

  it('spells all-due out: every applicable operation of earlier stations, shops included, the site not', () => {
    expect(requiredBy('finished')).toStrictEqual(['framed', 'wired', 'piped', 'boarded', 'gassed']);
    expect(requiredBy('finished', { ...DESIGN, role: 'dry' })).toStrictEqual([
      'framed',
      'wired',
      'boarded',
      'gassed',
    ]);
  });

  it('gives each edge its authority, with the row it stands in', () => {
    const files = changed(
      O,
      'hard: [framed]',
      'hard: [framed, gassed]\n  hard_source: { gassed: 24 CFR 3280.705 }',
    );
    expect(resolved(files).operations['boarded']?.requires).toStrictEqual([
      { operation: 'framed', source: { kind: 'practice', reference: 'practice', row: 'operations.yaml:21' } },
      {
        operation: 'gassed',
        source: { kind: 'published', reference: '24 CFR 3280.705', row: 'operations.yaml:21' },
      },
    ]);
  });

  it('gives each value its row', () => {
    expect(resolved().operations['wired']?.values[0]?.source).toStrictEqual({
      kind: 'published',
      reference: 'NEC',
      row: 'values.csv:2',
    });
  });

  it('puts the first variant that matches in place of the rest', () => {
    const files = changed(
      O,
      'soft: [wired]',
      `soft: [wired]\n  variants:\n    - { when: { wind: '"III"' }, station: shop, soft: [], en: Boarded at the table }\n    - { when: { wind: '"II","III"' }, station: final }`,
    );
    const boarded = (wind: string) => resolved(files, { ...DESIGN, wind }).operations['boarded'];
    expect(boarded('I')).toMatchObject({ station: 'walls', expects: ['wired'], name: { en: 'Boarded' } });
    expect(boarded('II')).toMatchObject({ station: 'final', expects: ['wired'] });
    expect(boarded('III')).toMatchObject({
      station: 'shop',
      expects: [],
      name: { en: 'Boarded at the table', es: 'Tablaroca' },
    });
  });

  it('applies a cover only where its conditions do', () => {
    const files = changed(
      'covers.csv',
      'source\nboarded,wired,any,-,refuse,published,NEC 300.4\nboarded,piped,any,-,refuse,practice,practice',
      'source,wind\nboarded,wired,any,-,refuse,published,NEC 300.4,"""I"""\nboarded,piped,any,-,refuse,practice,practice,-',
    );
    expect(resolved(files).operations['boarded']?.hides).toHaveLength(2);
    expect(resolved(files, { ...DESIGN, wind: 'II' }).operations['boarded']?.hides).toHaveLength(1);
  });

  it('with no other face left in the design, lets the cover hide by itself', () => {
    const files = changed('covers.csv', 'boarded,wired,any,-', 'boarded,wired,second,piped');
    expect(resolved(files).operations['boarded']?.hides[0]?.otherFace).toStrictEqual(['piped']);
    expect(
      resolved(files, { ...DESIGN, role: 'dry' }).operations['boarded']?.hides[0]?.otherFace,
    ).toStrictEqual([]);
  });

  it('is told by its digest: the SHA-256 of all but the digest as RFC 8785 writes it, operations by theirs', () => {
    const { digest, ...rest } = resolved();
    const operations = Object.fromEntries(
      Object.entries(rest.operations).map(([id, operation]) => [
        id,
        sha256Hex(canonicalJson({ ...operation })),
      ]),
    );
    expect(digest).toBe(sha256Hex(canonicalJson({ ...rest, operations })));
    expect(resolved(SMALL, { ...DESIGN, wind: 'II' }).digest).not.toBe(digest);
    expect(resolved().digest).toBe(digest);
  });

  it('is plain JSON, the same after a trip to a tablet', () => {
    expect(JSON.parse(JSON.stringify(resolved()))).toStrictEqual(resolved());
  });
});

describe('what the design itself requires', () => {
  const nails = (given: string) =>
    resolved(SMALL, { ...DESIGN, wind: 'II', nails: given }).operations['wired']?.values.find(
      ({ characteristic }) => characteristic === 'nails',
    );

  it('may be a test', () => {
    expect(nails('>= 8')).toMatchObject({ test: { is: 'compare', op: '>=', number: '8' }, required: '>= 8' });
  });

  it('or a number, to be met exactly', () => {
    expect(nails('8')).toMatchObject({ test: { is: 'compare', op: '=', number: '8' }, required: '8' });
  });

  it('is complained of where it is neither', () => {
    expect(problems({ ...DESIGN, wind: 'II', nails: 'eight' })).toMatchObject([
      { file: 'design', column: 'nails' },
    ]);
    expect(problems({ ...DESIGN, wind: 'II', nails: '"eight"' })).toMatchObject([{ column: 'nails' }]);
  });

  it('is complained of where it is missing, but only where a row asks for it', () => {
    const { nails: _, ...without } = DESIGN;
    expect(problems({ ...without, wind: 'II' })).toStrictEqual([
      { file: 'design', row: 1, column: 'nails', says: 'is not given, and row 5 of values.csv requires it' },
    ]);
    expect(problems(without)).toStrictEqual([]);
  });
});

describe('a design', () => {
  it('must give every attribute that some row asks about', () => {
    const { wind: _, ...without } = DESIGN;
    expect(problems(without)).toStrictEqual([
      { file: 'design', row: 1, column: 'wind', says: 'is missing from the design' },
    ]);
  });

  it('may give no value its attribute does not have, and nothing the rulebook has not heard of', () => {
    expect(problems({ ...DESIGN, wind: 'IV', colour: 'red' })).toStrictEqual([
      { file: 'design', row: 1, column: 'wind', says: '"IV" is none of its values: I, II, III' },
      {
        file: 'design',
        row: 1,
        column: 'colour',
        says: 'is no attribute or detail of the design in this rulebook',
      },
    ]);
  });
});

describe('the plan of a home', () => {
  const { role: _, ...homes } = DESIGN;

  it('is that of a design without what differs between its sections, and has the work at the site', () => {
    expect(resolved(SMALL, homes).order).toStrictEqual(['joined']);
  });

  it('must give the rest of its design all the same', () => {
    const { wind: _wind, ...without } = homes;
    expect(problems(without)).toMatchObject([{ column: 'wind', says: 'is missing from the design' }]);
  });

  it('still has what that work needs of its sections, to be looked at', () => {
    expect(requiredBy('joined', homes)).toStrictEqual(['boarded']);
    expect(Object.keys(resolved(SMALL, homes).operations)).toStrictEqual(['boarded', 'joined']);
  });
});

describe('a rulebook for a log that came without one', () => {
  const files = openRulebook({
    name: 'Some plant',
    zone: 'America/Denver',
    stations: ['Bay 7', '10', 'yes'],
    operations: [
      { id: 'Sew: hem', station: '10' },
      { id: 'cut', station: 'Bay 7' },
      { id: 'no', station: 'yes' },
    ],
  });

  it('takes its stations in the order the log has them, whatever they are called', () => {
    expect(resolved(files, {}).stations.map(({ id, pos }) => [id, pos])).toStrictEqual([
      ['Bay 7', 1],
      ['10', 2],
      ['yes', 3],
    ]);
  });

  it('requires nothing of the order', () => {
    const plan = resolved(files, {});
    expect(plan.enforced).toBe(false);
    expect(plan.order).toStrictEqual(['cut', 'Sew: hem', 'no']);
  });
});
