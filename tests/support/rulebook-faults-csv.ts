/** One change to the small rulebook; the complaint must name where it stands and what is the matter. */
export type RulebookFault = readonly [
  what: string,
  change: readonly [file: string, from: string, to: string],
  at: readonly [file: string, row: number, column: string | null],
  says: string,
];

const V = 'values.csv';
const C = 'covers.csv';

/** What can be wrong with the tables. */
export const CSV_FAULTS: readonly RulebookFault[] = [
  [
    'a cover that is no operation',
    [C, 'boarded,piped', 'board,piped'],
    [C, 3, 'cover'],
    '`board` is no operation',
  ],
  [
    'a cover of what is no operation',
    [C, 'boarded,piped', 'boarded,pipe'],
    [C, 3, 'hides'],
    '`pipe` is no operation',
  ],
  [
    'a cover that hides itself',
    [C, 'boarded,piped', 'boarded,boarded'],
    [C, 3, 'hides'],
    'cannot hide itself',
  ],
  [
    'an unknown other face',
    [C, 'piped,any,-', 'piped,second,wrap'],
    [C, 3, 'other_face'],
    '`wrap` is no operation',
  ],
  [
    'another face that is the hidden work itself',
    [C, 'piped,any,-', 'piped,second,piped'],
    [C, 3, 'other_face'],
    'is a third operation',
  ],
  [
    'another face where there is none',
    [C, 'piped,any,-', 'piped,any,wired'],
    [C, 3, 'other_face'],
    'belongs to rows hidden `second` only',
  ],
  [
    'an unknown way of hiding',
    [C, 'piped,any', 'piped,half'],
    [C, 3, 'hidden'],
    'is none of "any", "second", "lift"',
  ],
  [
    'an unknown grade',
    [C, 'piped,any,-,refuse', 'piped,any,-,stop'],
    [C, 3, 'grade'],
    'is none of "refuse", "hold", "note"',
  ],
  [
    'a row with a cell too many',
    [C, 'practice,practice\n', 'practice,practice,more\n'],
    [C, 3, null],
    'has 8 cells where the header has 7',
  ],
  [
    'a column no table has',
    [C, 'source\n', 'sauce\n'],
    [C, 1, 'sauce'],
    'is no column here and no design attribute',
  ],
  ['a column missing', [C, 'source\n', 'sauce\n'], [C, 1, 'source'], 'column is missing'],
  ['a quote never closed', [C, 'published,NEC', 'published,"NEC'], [C, 2, null], 'Quote Not Closed'],
  [
    'a value of an unknown operation',
    [V, 'wired,edge', 'wire,edge'],
    [V, 2, 'operation'],
    '`wire` is no operation',
  ],
  [
    'an unknown unit',
    [V, 'edge,Edge,Orilla,measure,[in_i]', 'edge,Edge,Orilla,measure,in'],
    [V, 2, 'unit'],
    '`in` is no unit',
  ],
  [
    'a measure without a unit',
    [V, 'edge,Edge,Orilla,measure,[in_i]', 'edge,Edge,Orilla,measure,-'],
    [V, 2, 'unit'],
    'a measure needs its unit',
  ],
  ['a yes/no with a unit', [V, 'Olor,yes-no,-', 'Olor,yes-no,[psi]'], [V, 9, 'unit'], 'a yes-no has none'],
  [
    'a requirement of another form',
    [V, '>= 1.25', '1.25 or more'],
    [V, 2, 'required'],
    '`1.25 or more` is not a comparison',
  ],
  [
    'an interval with nothing in it',
    [V, '>= 1.25', '[2..1]'],
    [V, 2, 'required'],
    'an interval with nothing in it',
  ],
  [
    'text required of a measure',
    [V, '>= 1.25', '"""wide"""'],
    [V, 2, 'required'],
    '"wide" is text, and a measure is a number',
  ],
  [
    'a number required of a yes/no',
    [V, '"""no"""', '>= 1'],
    [V, 9, 'required'],
    'a yes-no is not compared as a number',
  ],
  [
    'an answer no yes/no can have',
    [V, '"""no"""', '"""maybe"""'],
    [V, 9, 'required'],
    '"maybe" is no answer',
  ],
  ['true required of a yes/no', [V, '"""no"""', 'false'], [V, 9, 'required'], 'a yes/no is "yes" or "no"'],
  [
    'a requirement beside the design’s',
    [V, '1,-,nails', '1,7,nails'],
    [V, 5, 'required'],
    'is given by the design already',
  ],
  [
    'a detail no design has',
    [V, '1,-,nails', '1,-,screws'],
    [V, 5, 'as_design'],
    '`screws` is no detail or attribute',
  ],
  [
    'a relation that is none',
    [V, 'start - end = 0', 'start - end'],
    [V, 8, 'relation'],
    'is no linear relation',
  ],
  [
    'a relation with an unknown part',
    [V, 'start - end = 0', 'start - ending = 0'],
    [V, 8, 'relation'],
    '`ending` is no characteristic of `gassed`',
  ],
  [
    'a relation with a part that is off',
    [V, 'start - end = 0', 'start - odor = 0'],
    [V, 8, 'relation'],
    '`odor` is no characteristic of `gassed`',
  ],
  [
    'a relation of numbers only',
    [V, 'start - end = 0', '1 <= 2'],
    [V, 8, 'relation'],
    'names no characteristic',
  ],
  [
    'a relation where none belongs',
    [
      V,
      'spacing,Spacing,Separación,measure,[in_i],<= 24,-,-',
      'spacing,Spacing,Separación,measure,[in_i],<= 24,-,edge = 1',
    ],
    [V, 3, 'relation'],
    'belongs to rows of kind derived only',
  ],
  [
    'choices of a measure',
    [V, '>= 1.25,-,-,-', '>= 1.25,-,-,a|b'],
    [V, 2, 'choices'],
    'belong to rows of kind choice only',
  ],
  [
    'a value from a lot of no kind',
    [V, 'hold,entry,-,always,1,published,NEC', 'hold,lot,-,always,1,published,NEC'],
    [V, 2, 'lot_kind'],
    'goes with `from` lot',
  ],
  [
    'a value from a lot of an unknown kind',
    [V, 'hold,entry,-,always,1,published,NEC', 'hold,lot,rope,always,1,published,NEC'],
    [V, 2, 'lot_kind'],
    '`rope` is no kind of lot',
  ],
  [
    'no places to check',
    [V, 'always,1,published,NEC', 'always,0,published,NEC'],
    [V, 2, 'worst_of'],
    'is no whole number above 0',
  ],
  ['a row that is neither on nor off', [V, 'NEC,yes', 'NEC,maybe'], [V, 2, 'on'], 'is none of "yes", "no"'],
  ['a condition cell of another form', [V, '"""III"""', 'III'], [V, 4, 'wind'], '`III` is not a comparison'],
  [
    'an unknown component',
    ['faults.csv', 'wire,pierced', 'wires,pierced'],
    ['faults.csv', 2, 'component'],
    '`wires` is no component',
  ],
  [
    'an unknown symptom',
    ['faults.csv', 'wire,pierced', 'wire,cut'],
    ['faults.csv', 2, 'symptom'],
    '`cut` is no symptom',
  ],
  [
    'a cause that is no operation',
    ['faults.csv', 'wired:a', 'wire:a'],
    ['faults.csv', 2, 'causes'],
    '`wire` is no operation',
  ],
  [
    'a cause without its weight',
    ['faults.csv', 'wired:a', 'wired'],
    ['faults.csv', 2, 'causes'],
    'is not of the form id:a',
  ],
  [
    'a look that is no operation',
    ['faults.csv', ',finished', ',looked'],
    ['faults.csv', 2, 'caught_by'],
    '`looked` is no operation',
  ],
  [
    'a component twice',
    ['components.csv', 'wire,Wire,Cable\n', 'wire,Wire,Cable\nwire,Wire,Cable\n'],
    ['components.csv', 3, 'id'],
    '`wire` stands here twice',
  ],
];
