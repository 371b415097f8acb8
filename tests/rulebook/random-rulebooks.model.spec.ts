import type { Design } from '@libs/judge';
import { readRulebook, resolvePlan } from '@libs/rulebook';
import type { RulebookFiles } from '@libs/rulebook';
import fc from 'fast-check';
import { demonstrationRulebookFiles, WET_HALF } from '../support/demonstration-rulebook';
import { problemsOf, read, sha256Hex, SMALL } from '../support/small-rulebook';

/**
 * Goal: whatever rulebook is written, its plan for every design is what its files say, no more and no less.
 * Method: random operations, edges, covers and values as plain data; written to files, read, resolved for every
 * design there is, and compared with the data itself.
 */
type Written = {
  readonly id: string;
  readonly wind: readonly string[];
  readonly needs: readonly string[];
  readonly expects: readonly string[];
  readonly hides: readonly string[];
  readonly limit: string | null;
};
const WINDS = ['I', 'II', 'III'] as const;
const STATIONS = ['floor', 'walls', 'final'] as const;

/** Edges lead to operations that stand before: no loops, so that every one of these is sound. */
const anyRulebook: fc.Arbitrary<readonly Written[]> = fc.integer({ min: 1, max: 9 }).chain((count) =>
  fc.tuple(
    ...Array.from({ length: count }, (_, index) => {
      const before = Array.from({ length: index }, (__, at) => `op-${at}`);
      return fc.record({
        id: fc.constant(`op-${index}`),
        wind: fc.subarray([...WINDS], { minLength: 1 }),
        needs: fc.subarray(before),
        expects: fc.subarray(before),
        hides: fc.subarray(before),
        limit: fc.option(fc.constantFrom('1', '2.5', '16')),
      });
    }),
  ),
);

const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
const cellOf = (values: readonly string[]): string => values.map((value) => `"${value}"`).join(',');
const isFew = ({ wind }: Written): boolean => wind.length < WINDS.length;

const filesOf = (all: readonly Written[]): RulebookFiles => {
  const known = new Map(all.map((one) => [one.id, one]));
  const meets = (a: Written, b: string): boolean =>
    a.wind.some((wind) => known.get(b)?.wind.includes(wind) === true);
  return {
    'plant.yaml': SMALL['plant.yaml']?.replace(', lots: [cable]', '') ?? '',
    'operations.yaml': all
      .map((one, index) =>
        JSON.stringify({
          id: one.id,
          en: `En ${one.id}`,
          es: `Es ${one.id}`,
          station: STATIONS[Math.floor((index * STATIONS.length) / all.length)],
          crew: 'walls',
          entry: 'V',
          hard: one.needs,
          soft: one.expects,
          ...(isFew(one) ? { when: { wind: cellOf(one.wind) } } : {}),
        }),
      )
      .map((operation) => `- ${operation}`)
      .join('\n'),
    'covers.csv': [
      'cover,hides,hidden,other_face,grade,source_kind,source',
      ...all.flatMap((one) =>
        one.hides
          .filter((hidden) => meets(one, hidden))
          .map((hidden) => `${one.id},${hidden},any,-,refuse,practice,p`),
      ),
    ].join('\n'),
    'values.csv': [
      'operation,characteristic,en,es,kind,unit,required,as_design,relation,choices,grade,from,lot_kind,asked,worst_of,source_kind,source,on',
      ...all.flatMap(({ id, limit }) =>
        limit === null
          ? []
          : [`${id},gap,G,G,measure,mm,${quoted(`<= ${limit}`)},-,-,-,hold,entry,-,always,1,practice,p,yes`],
      ),
    ].join('\n'),
  };
};

const designOf = (wind: string): Design => ({ wind, role: 'wet', sections: '2' });

describe('a random sound rulebook', () => {
  it('gives every design the plan its files say', () => {
    fc.assert(
      fc.property(anyRulebook, (all) => {
        const rulebook = read(filesOf(all));
        for (const wind of WINDS) {
          const resolved = resolvePlan(rulebook, 1, designOf(wind), sha256Hex);
          if (!resolved.ok) throw new Error(JSON.stringify(resolved.problems));
          const applies = (id: string): boolean =>
            all.find((one) => one.id === id)?.wind.includes(wind) === true;
          const { operations, order } = resolved.plan;
          expect(Object.keys(operations).sort()).toStrictEqual(
            all
              .map(({ id }) => id)
              .filter(applies)
              .sort(),
          );
          for (const one of all.filter(({ id }) => applies(id))) {
            const planned = operations[one.id];
            expect({
              needs: planned?.requires.map(({ operation }) => operation),
              expects: planned?.expects,
              hides: planned?.hides.map(({ operation }) => operation),
              required: planned?.values.map(({ required }) => required),
            }).toStrictEqual({
              needs: one.needs.filter(applies),
              expects: one.expects.filter(applies),
              hides: one.hides.filter(applies),
              required: one.limit === null ? [] : [`<= ${one.limit}`],
            });
            const at = order.indexOf(one.id);
            for (const need of [...one.needs, ...one.hides].filter(applies)) {
              expect(order.indexOf(need)).toBeLessThan(at);
            }
          }
        }
      }),
      { numRuns: 150 },
    );
  });

  it('is refused by name as soon as an operation leads back to itself in some design', () => {
    fc.assert(
      fc.property(anyRulebook, (all) => {
        const last = all.at(-1);
        const first = all[0];
        if (last === undefined || first === undefined || all.length < 2) return;
        const looped = all.map((one) => {
          if (one.id === first.id) return { ...one, needs: [last.id] };
          return one.id === last.id ? { ...one, needs: [first.id] } : one;
        });
        const meets = first.wind.some((wind) => last.wind.includes(wind));
        const loops = problemsOf(filesOf(looped)).filter(({ says }) => says.startsWith('needs itself'));
        // Through others the two may meet in a loop all the same, so only one way is certain.
        if (meets) expect(loops.length).toBeGreaterThan(0);
      }),
      { numRuns: 100 },
    );
  });
});

/**
 * Goal: however a rulebook is broken, reading it answers, and names a place for everything it says.
 * Method: the small and the demonstration rulebook, a few random edits to their texts.
 */
type Edit = { readonly file: number; readonly at: number; readonly cut: number; readonly put: string };
const anyEdit: fc.Arbitrary<Edit> = fc.record({
  file: fc.nat(),
  at: fc.nat(),
  cut: fc.constantFrom(0, 0, 1, 2, 7, 40),
  put: fc.oneof(
    fc.constantFrom(
      '',
      ',',
      '"',
      '\n',
      ':',
      '- ',
      '[',
      '"I"',
      '>= ',
      'not(',
      '-',
      ';',
      '\uFEFF',
      '*',
      '&a',
      '__proto__',
    ),
    fc.string({ maxLength: 6 }),
  ),
});
const edited = (files: RulebookFiles, edits: readonly Edit[]): RulebookFiles =>
  edits.reduce<RulebookFiles>((all, { file, at, cut, put }) => {
    const names = Object.keys(all);
    const name = names[file % names.length] ?? '';
    const text = all[name] ?? '';
    const place = at % (text.length + 1);
    return { ...all, [name]: text.slice(0, place) + put + text.slice(place + cut) };
  }, files);

const looksSound = (files: RulebookFiles, design: Design): 'refused' | 'read' => {
  const answer = readRulebook(files);
  if (answer.ok) {
    expect(typeof resolvePlan(answer.rulebook, 1, design, sha256Hex).ok).toBe('boolean');
    return 'read';
  }
  expect(answer.problems.length).toBeGreaterThan(0);
  for (const { file, row, says } of answer.problems) {
    const lines = (files[file] ?? '').split(/\r\n|\r|\n/).length;
    expect({ file, known: file in files || file === 'operations.yaml', says: says !== '' }).toStrictEqual({
      file,
      known: true,
      says: true,
    });
    expect(row).toBeGreaterThanOrEqual(1);
    expect(row).toBeLessThanOrEqual(lines + 1);
  }
  return 'refused';
};

describe('a rulebook broken at random', () => {
  it('is refused with a place for each complaint, or read, and never crashes', () => {
    const seen = { refused: 0, read: 0 };
    fc.assert(
      fc.property(fc.array(anyEdit, { minLength: 1, maxLength: 4 }), (edits) => {
        seen[looksSound(edited(SMALL, edits), { role: 'wet', wind: 'I', sections: '2', nails: '7' })] += 1;
      }),
      { numRuns: 600 },
    );
    expect(seen.refused).toBeGreaterThan(100);
    expect(seen.read).toBeGreaterThan(20);
  });

  it('the demonstration’s own included', () => {
    const files = demonstrationRulebookFiles();
    fc.assert(
      fc.property(fc.array(anyEdit, { minLength: 1, maxLength: 3 }), (edits) => {
        looksSound(edited(files, edits), WET_HALF);
      }),
      { numRuns: 25 },
    );
  });
});
