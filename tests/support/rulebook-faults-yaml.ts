import { SMALL } from './small-rulebook';
import type { RulebookFault } from './rulebook-faults-csv';

const P = 'plant.yaml';
const O = 'operations.yaml';

/** The line, from 1, on which a text first stands in a file. */
const lineOf = (file: string, text: string): number =>
  (SMALL[file] ?? '').split('\n').findIndex((line) => line.includes(text)) + 1;

/** What can be wrong with the plant and its operations. */
export const YAML_FAULTS: readonly RulebookFault[] = [
  [
    'an operation of an unknown station',
    [O, 'station: walls', 'station: wall'],
    [O, lineOf(O, 'id: boarded'), 'station'],
    '`wall` is no station',
  ],
  [
    'a star that YAML takes for an alias, and that points at nothing',
    [O, 'crew: walls', 'crew: *walls'],
    [O, lineOf(O, 'crew: walls'), null],
    '"*walls" points at nothing',
  ],
  [
    'an unknown crew',
    [O, 'crew: walls', 'crew: wall'],
    [O, lineOf(O, 'id: framed'), 'crew'],
    '`wall` is no crew',
  ],
  [
    'an unknown crew among the signers',
    [O, 'crew:quality', 'crew:qa'],
    [O, lineOf(O, 'id: gassed'), 'signers'],
    '`qa` is no crew',
  ],
  [
    'a signer who is neither crew nor role',
    [O, "'crew:quality'", 'quality'],
    [O, lineOf(O, 'signers:'), 'signers'],
    'neither crew:ID nor role:NAME',
  ],
  [
    'a hard edge to nowhere',
    [O, 'hard: [framed]', 'hard: [frame]'],
    [O, lineOf(O, 'id: boarded'), 'hard'],
    '`frame` is no operation',
  ],
  [
    'a soft edge to nowhere',
    [O, 'soft: [wired]', 'soft: [wire]'],
    [O, lineOf(O, 'id: boarded'), 'soft'],
    '`wire` is no operation',
  ],
  [
    'an operation that needs itself',
    [O, 'hard: [framed]', 'hard: [boarded]'],
    [O, lineOf(O, 'id: boarded'), 'hard'],
    'cannot need itself',
  ],
  [
    'the source of an edge that is none',
    [O, 'hard: [framed]', 'hard: [framed]\n  hard_source: { wired: "3280.1" }'],
    [O, lineOf(O, 'id: boarded'), 'hard_source'],
    '`wired` is not among hard',
  ],
  [
    'an unknown kind of lot',
    [O, 'lots: [cable]', 'lots: [wire]'],
    [O, lineOf(O, 'id: wired'), 'lots'],
    '`wire` is no kind of lot',
  ],
  [
    'an unknown kind of instrument',
    [O, 'instrument: gauge', 'instrument: ruler'],
    [O, lineOf(O, 'id: gassed'), 'instrument'],
    '`ruler` is no kind of instrument',
  ],
  [
    'the same operation twice',
    [O, 'id: piped', 'id: wired'],
    [O, lineOf(O, 'id: piped'), 'id'],
    '`wired` stands here twice',
  ],
  [
    'an entry that is no entry',
    [O, 'entry: V', 'entry: X'],
    [O, lineOf(O, 'entry: V'), 'entry'],
    'is none of "S", "V", "I", "T"',
  ],
  [
    'a field that no operation has',
    [O, 'entry: V', 'entry: V\n  colour: red'],
    [O, lineOf(O, 'id: wired'), null],
    'has no field "colour"',
  ],
  [
    'an operation without its Spanish',
    [O, '  es: Cableada\n', ''],
    [O, lineOf(O, 'id: wired'), 'es'],
    'is missing',
  ],
  [
    'a condition on an unknown attribute',
    [O, '{ role: \'"wet"\' }', '{ half: \'"wet"\' }'],
    [O, lineOf(O, 'id: piped'), 'half'],
    '`half` is no attribute of the design',
  ],
  [
    'a condition no value can meet',
    [O, '\'"wet"\'', '\'"damp"\''],
    [O, lineOf(O, 'id: piped'), 'role'],
    '"damp" is no value of `role`',
  ],
  [
    'a number where the attribute is text',
    [O, '\'"wet"\'', "'>= 1'"],
    [O, lineOf(O, 'id: piped'), 'role'],
    'is not a number',
  ],
  [
    'text where the attribute is a number',
    [O, "'>= 2'", '\'"2"\''],
    [O, lineOf(O, 'id: joined'), 'sections'],
    'is text, and `sections` is a number',
  ],
  [
    'a cell of another form',
    [O, "'>= 2'", "'? > 1'"],
    [O, lineOf(O, 'id: joined'), 'sections'],
    '`? > 1` is not a comparison',
  ],
  ['YAML that is none', [O, 'entry: V', 'entry: [V'], [O, lineOf(O, 'entry: V') + 1, null], ''],
  [
    'a key given twice',
    [O, 'entry: V', 'entry: V\n  entry: S'],
    [O, lineOf(O, 'entry: V') + 1, null],
    'Map keys must be unique',
  ],
  [
    'a station twice',
    [P, 'id: walls, pos: 2', 'id: floor, pos: 2'],
    [P, lineOf(P, 'pos: 2'), 'stations.id'],
    '`floor` stands here twice',
  ],
  [
    'a place in the line given twice',
    [P, 'pos: 2', 'pos: 1'],
    [P, lineOf(P, 'pos: 2'), 'stations.pos'],
    '`1` stands here twice',
  ],
  [
    'a shop with a place in the line',
    [P, 'id: shop, pos: null', 'id: shop, pos: 9'],
    [P, lineOf(P, 'id: shop'), 'stations.pos'],
    'has a place in it, and no other has',
  ],
  [
    'a fact that is no attribute',
    [P, 'facts: [wind]', 'facts: [rain]'],
    [P, lineOf(P, 'facts: [wind]'), 'stations.facts'],
    '`rain` is no attribute',
  ],
  ['a reason for nothing', [P, 'for: [hold]', 'for: []'], [P, lineOf(P, 'for: [hold]'), 'reasons.for'], ''],
  [
    'a numeric attribute with a value that is no number',
    [P, "value: '2'", 'value: two'],
    [P, lineOf(P, 'id: sections'), 'attributes.values'],
    '`two` is no number',
  ],
];
