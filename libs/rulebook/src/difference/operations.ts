import type { Words } from '@libs/judge';
import type { OperationFields, OperationRow, RulebookBody } from '../body';
import type { Aspect, AspectName, Change, Told, Touched } from './change';
import { becameOf, differing, words } from './change';
import type { Naming } from './naming';
import type { Both } from './rows';

export const operationChanges = (bodies: Both<RulebookBody>, naming: Both<Naming>): readonly Change[] => {
  const was = new Map(bodies.before.operations.map((row) => [row.id, row]));
  const is = new Map(bodies.after.operations.map((row) => [row.id, row]));
  return [...new Set([...is.keys(), ...was.keys()])].flatMap((id) =>
    changeOf(was.get(id) ?? null, is.get(id) ?? null, naming),
  );
};

const changeOf = (
  before: OperationRow | null,
  after: OperationRow | null,
  naming: Both<Naming>,
): readonly Change[] => {
  const row = after ?? before;
  const change = becameOf(before, after);
  const aspects = aspectsOf(before, after, naming);
  if (row === null || (change === 'changed' && aspects.length === 0)) return [];

  const own = after === null ? naming.before : naming.after;
  return [
    {
      what: 'operation',
      change,
      id: row.id,
      subject: row.fields.name,
      of: null,
      conditions: change === 'changed' ? [] : own.conditions(row.when),
      aspects,
      touches: touchedBy(change, aspects),
      file: row.file,
      row: row.row,
    },
  ];
};

const aspectsOf = (
  before: OperationRow | null,
  after: OperationRow | null,
  naming: Both<Naming>,
): readonly Aspect[] =>
  before === null || after === null
    ? []
    : differing(pairs(toldOf(before, naming.before), toldOf(after, naming.after)));

type ToldOf = { readonly [A in AspectName]?: Told | null };

const pairs = (before: ToldOf, after: ToldOf): readonly (readonly [AspectName, Told | null, Told | null])[] =>
  ASPECTS.map((aspect) => [aspect, before[aspect] ?? null, after[aspect] ?? null]);

const ASPECTS: readonly AspectName[] = [
  'name',
  'station',
  'crew',
  'entry',
  'when',
  'requires',
  'expects',
  'signers',
  'photo',
  'instrument',
  'lots',
  'gate',
  'documents',
  'caution',
  'plain',
  'source',
  'else',
];

const toldOf = ({ fields, when, variants }: OperationRow, naming: Naming): ToldOf => ({
  name: told(fields.name),
  station: naming.station(fields.station),
  crew: naming.crew(fields.crew),
  entry: words(`${fields.entry}, ${fields.scope}`),
  when: whenOf(when, naming),
  requires: naming.listed(fields.hard),
  expects: naming.listed(fields.soft),
  signers: listed(fields.signers),
  photo: words(fields.photo),
  instrument: fields.instrument === null ? null : words(fields.instrument),
  lots: listed(fields.lots),
  gate: words([fields.gate ? 'gate' : '', fields.label ? 'label' : ''].join(' ').trim() || '-'),
  documents: listed([fields.manual ?? '', ...(fields.drawings ?? [])].filter((one) => one !== '')),
  caution: told(fields.caution),
  plain: told(fields.plain),
  source: listed([...new Set(fields.hard.map((id) => fields.sourceOf(id).reference))]),
  else: variants.length === 0 ? null : words(JSON.stringify(variants.map(variantText))),
});

const told = (all: Words | null): Told | null => (all === null ? null : { is: 'words', words: all });

const listed = (all: readonly string[]): Told | null => (all.length === 0 ? null : words(all.join(', ')));

const variantText = (variant: {
  readonly when: unknown;
  readonly fields: Partial<OperationFields>;
}): unknown => ({
  when: variant.when,
  ...variant.fields,
});

const whenOf = (when: OperationRow['when'], naming: Naming): Told | null => {
  if (when.length === 0) return null;
  const says = { en: conditionText(naming, when, 'en'), es: conditionText(naming, when, 'es') };
  return { is: 'words', words: says, key: JSON.stringify(when) };
};

const conditionText = (naming: Naming, when: OperationRow['when'], language: keyof Words): string =>
  naming
    .conditions(when)
    .map(({ attribute, values, cell }) =>
      cell === null ? values.map((one) => one[language]).join(' / ') : `${attribute[language]} ${cell}`,
    )
    .join(', ');

/** What the manual has to say of inspections and tests (24 CFR 3282.361(c)); names and cautions are the plant's own. */
const OF_MANUAL: ReadonlySet<AspectName> = new Set<AspectName>([
  'entry',
  'station',
  'when',
  'requires',
  'signers',
  'photo',
  'instrument',
  'lots',
  'gate',
  'else',
]);

const touchedBy = (change: Change['change'], aspects: readonly Aspect[]): Touched => {
  if (aspects.some(({ aspect }) => aspect === 'documents')) return 'design';
  if (change !== 'changed') return 'manual';
  return aspects.some(({ aspect }) => OF_MANUAL.has(aspect)) ? 'manual' : null;
};
