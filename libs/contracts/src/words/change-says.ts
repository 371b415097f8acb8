import type { ValueKind, Words } from '@libs/judge';
import { NOTHING, joined, same } from './say';
import { requirementSays } from './value-says';

/** What is told of a thing: a requirement as its cell has it, or words. */
type Told =
  | { readonly is: 'cell'; readonly cell: string; readonly unit: string | null; readonly kind: ValueKind }
  | { readonly is: 'words'; readonly words: Words };

type Condition = {
  readonly attribute: Words;
  readonly values: readonly Words[];
  readonly cell: string | null;
};

/** One difference between two rulebooks, as `libs/rulebook` finds it. */
export type RuleChange = {
  readonly what: string;
  readonly change: 'added' | 'dropped' | 'changed';
  readonly subject: Words;
  readonly of: Words | null;
  readonly conditions: readonly Condition[];
  readonly aspects: readonly {
    readonly aspect: string;
    readonly before: Told | null;
    readonly after: Told | null;
  }[];
};

const OR: Words = { en: ' or ', es: ' o ' };

/** Where a row holds: "wind zone I, 2x4 walls or 2x6 walls". */
export const conditionsSay = (conditions: readonly Condition[]): Words =>
  joined(
    conditions.map(({ attribute, values, cell }) =>
      cell === null ? joined(values, OR) : joined([attribute, requirementSays(cell, null)], ' '),
    ),
    ', ',
  );

/** "Roof shingled: lag spacing, wind zone I: at most 36 in becomes at most 32 in." */
export const changeSays = (change: RuleChange): Words => {
  const about = joined([change.subject, ...(change.of === null ? [] : [ofSays(change)])], ': ');
  const conditions = conditionsSay(change.conditions);
  const subject = conditions.en === '' ? about : joined([about, conditions], ', ');
  return joined([subject, whatSays(change)], ': ');
};

const ofSays = ({ what, of }: RuleChange): Words => {
  if (of === null) return NOTHING;
  if (what === 'cover') return { en: `covers “${of.en}”`, es: `tapa “${of.es}”` };
  if (what === 'time') return { en: `after “${of.en}”`, es: `después de “${of.es}”` };
  return of;
};

const whatSays = ({ what, change, aspects }: RuleChange): Words => {
  if (change === 'changed') return joined(aspects.map(aspectSays), '; ');
  const main = aspects.find(({ aspect }) => aspect === 'required' || aspect === 'span');
  const told = change === 'added' ? main?.after : main?.before;
  const kind = change === 'added' ? ADDED : DROPPED;
  const word = what === 'value' ? kind.value : kind.other;
  return told === null || told === undefined ? word : joined([word, toldSays(told)], ', ');
};

const ADDED = {
  value: { en: 'newly required', es: 'nuevo requisito' },
  other: { en: 'new', es: 'nuevo' },
};
const DROPPED = {
  value: { en: 'no longer required', es: 'ya no se requiere' },
  other: { en: 'dropped', es: 'se quita' },
};

/** A requirement speaks for itself; any other aspect is named first. */
const aspectSays = ({ aspect, before, after }: RuleChange['aspects'][number]): Words => {
  const name = ASPECTS[aspect];
  const says = becomes(before, after);
  return name === undefined ? says : joined([name, says], ' ');
};

const NONE: Words = { en: 'nothing', es: 'nada' };

const becomes = (before: Told | null, after: Told | null): Words => {
  const from = before === null ? NONE : toldSays(before);
  const to = after === null ? NONE : toldSays(after);
  return { en: `${from.en} becomes ${to.en}`, es: `${from.es} pasa a ${to.es}` };
};

const toldSays = (told: Told): Words =>
  told.is === 'words' ? coded(told.words) : requirementSays(told.cell, told.unit, told.kind);

/** Codes of the files that have a word of their own. */
const CODES: { readonly [code: string]: Words } = {
  refuse: { en: 'refuses', es: 'rechaza' },
  hold: { en: 'holds', es: 'retiene' },
  note: { en: 'notes', es: 'anota' },
  always: { en: 'always', es: 'siempre' },
  none: { en: 'none', es: 'ninguna' },
};

const coded = (words: Words): Words => CODES[words.en] ?? (words.en === '' ? NONE : words);

const ASPECTS: { readonly [aspect: string]: Words } = {
  choices: { en: 'choices:', es: 'opciones:' },
  grade: { en: 'gravity:', es: 'gravedad:' },
  asked: { en: 'how it is read:', es: 'cómo se lee:' },
  source: { en: 'source:', es: 'fuente:' },
  name: { en: 'name:', es: 'nombre:' },
  station: { en: 'station:', es: 'estación:' },
  crew: { en: 'crew:', es: 'cuadrilla:' },
  entry: { en: 'kind of entry:', es: 'tipo de registro:' },
  requires: { en: 'comes after:', es: 'va después de:' },
  expects: { en: 'expects:', es: 'espera:' },
  photo: { en: 'photo:', es: 'foto:' },
  instrument: { en: 'instrument:', es: 'instrumento:' },
  lots: { en: 'lots:', es: 'lotes:' },
  caution: { en: 'caution:', es: 'precaución:' },
  gate: { en: 'gate:', es: 'control:' },
  signers: { en: 'signed by:', es: 'firma:' },
  documents: { en: 'manual and drawings:', es: 'manual y planos:' },
  plain: { en: 'for the owner:', es: 'para el dueño:' },
  when: { en: 'applies to:', es: 'se aplica a:' },
  hidden: { en: 'hidden:', es: 'queda tapado:' },
  span: { en: 'time:', es: 'tiempo:' },
  else: { en: 'details:', es: 'detalles:' },
};

/** `crew:quality` and `role:inspector`, where nobody knows their names. */
export const signerSays = (token: string): Words => same(token.slice(token.indexOf(':') + 1));
