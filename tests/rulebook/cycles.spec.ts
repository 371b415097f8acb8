import { changed, problemsOf, resolved, SMALL } from '../support/small-rulebook';

const O = 'operations.yaml';

describe('operations that would have to come before themselves', () => {
  it('are named in full, with the file and row of the first', () => {
    const files = changed(O, '  lots: [cable]\n', '  lots: [cable]\n  hard: [boarded]\n');
    expect(problemsOf(files)).toStrictEqual([
      { file: O, row: 7, column: 'hard', says: 'needs itself: wired needs boarded needs wired' },
    ]);
  });

  it('are found through all-due as well', () => {
    const files = changed(O, '  lots: [cable]\n', '  lots: [cable]\n  hard: [finished]\n');
    expect(problemsOf(files)[0]?.says).toBe('needs itself: wired needs finished needs wired');
  });

  it('are no fault where the two edges never meet in one design', () => {
    const files = changed(
      O,
      '  lots: [cable]\n',
      `  lots: [cable]\n  variants: [{ when: { wind: '"III"' }, hard: [boarded] }]\n`,
      changed(
        'covers.csv',
        'source\nboarded,wired,any,-,refuse,published,NEC 300.4',
        'source,wind\nboarded,wired,any,-,refuse,published,NEC 300.4,"not(""III"")"',
        changed(
          'covers.csv',
          'boarded,piped,any,-,refuse,practice,practice',
          'boarded,piped,any,-,refuse,practice,practice,-',
        ),
      ),
    );
    expect(problemsOf(files)).toStrictEqual([]);
  });

  it('are a fault as soon as one design has both', () => {
    const files = changed(
      O,
      '  lots: [cable]\n',
      `  lots: [cable]\n  variants: [{ when: { wind: '"III"' }, hard: [boarded] }]\n`,
    );
    expect(problemsOf(files)).toMatchObject([
      { file: O, says: 'needs itself: wired needs boarded needs wired' },
    ]);
  });
});

describe('the work of a shop', () => {
  const shopAfterFloor = changed(
    O,
    '  lots: [cable]\n',
    '  lots: [cable]\n  hard: [all-due]\n',
    changed(
      O,
      '  station: shop\n  crew: walls\n  entry: S\n',
      '  station: shop\n  crew: walls\n  entry: S\n  hard: [wired]\n',
    ),
  );

  it('is due after the floor where the walls are the first to need it, and is no loop', () => {
    expect(problemsOf(shopAfterFloor)).toStrictEqual([]);
    const { order } = resolved(shopAfterFloor);
    expect(order.indexOf('wired')).toBeLessThan(order.indexOf('framed'));
  });

  it('is a loop as soon as the floor needs it too', () => {
    const files = changed(O, 'hard: [all-due]', 'hard: [all-due, framed]', shopAfterFloor);
    expect(problemsOf(files)).toMatchObject([
      { file: O, says: 'needs itself: framed needs wired needs framed' },
    ]);
  });
});

describe('two loops', () => {
  it('are both named, each by itself', () => {
    const files = changed(
      O,
      '  instrument: gauge\n',
      '  instrument: gauge\n  hard: [joined]\n',
      changed(
        O,
        "'>= 2' }\n  hard: [boarded]\n",
        "'>= 2' }\n  hard: [boarded, gassed]\n",
        changed(O, '  lots: [cable]\n', '  lots: [cable]\n  hard: [boarded]\n'),
      ),
    );
    expect(problemsOf(files).map(({ says }) => says)).toStrictEqual([
      'needs itself: wired needs boarded needs wired',
      'needs itself: gassed needs joined needs gassed',
    ]);
  });
});

describe('an operation that a variant moves before what it needs', () => {
  const moved = (wind: string) =>
    changed(
      O,
      "  when: { sections: '>= 2' }\n  hard: [boarded]\n",
      `  when: { sections: '>= 2' }\n  hard: [finished]\n  variants: [{ when: { wind: '${wind}' }, station: floor, scope: section }]\n`,
    );

  it('needs itself through all-due, in that design only', () => {
    expect(problemsOf(moved('"III"'))).toMatchObject([
      { file: O, column: 'hard', says: 'needs itself: finished needs joined needs finished' },
    ]);
  });
});

describe('the working order', () => {
  it('goes along the line, a shop just before what it feeds, the site last', () => {
    expect(resolved().order).toStrictEqual([
      'wired',
      'piped',
      'framed',
      'boarded',
      'gassed',
      'finished',
      'joined',
    ]);
  });

  it('never has an operation before what it requires or hides', () => {
    const files = changed(O, '  lots: [cable]\n', '  lots: [cable]\n  hard: [gassed]\n', SMALL);
    const { order } = resolved(files);
    expect(order.indexOf('gassed')).toBeLessThan(order.indexOf('wired'));
  });
});
