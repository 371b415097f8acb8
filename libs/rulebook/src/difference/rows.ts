import type { Source } from '@libs/judge';
import type { CoverRow, RulebookBody, TimeRow, ValueRow, When } from '../body';
import type { Aspect, Change, Told, Touched } from './change';
import { becameOf, differing, words } from './change';
import type { Naming } from './naming';
import { cellOf } from './naming';

/** Two rulebooks, the one before and the one after. */
export type Both<T> = { readonly before: T; readonly after: T };

type Row = { readonly row: number; readonly when: When };
type Match<R> = { readonly before: R | null; readonly after: R | null };

/** Rows that speak of the same under the same conditions are one row, whatever line they stand on. */
const matched = <R extends Row>(
  { before, after }: Both<readonly R[]>,
  subjectOf: (row: R) => string,
): readonly Match<R>[] => {
  const key = (row: R): string => `${subjectOf(row)}\n${conditionsKey(row.when)}`;
  const was = new Map(before.map((row) => [key(row), row]));
  const is = new Map(after.map((row) => [key(row), row]));
  return [...new Set([...is.keys(), ...was.keys()])].map((each) => ({
    before: was.get(each) ?? null,
    after: is.get(each) ?? null,
  }));
};

const conditionsKey = (when: When): string =>
  when
    .map(({ attribute, test }) => `${attribute} ${cellOf(test)}`)
    .sort()
    .join('\n');

const rowsIn = <R>(tables: ReadonlyMap<string, readonly (readonly R[])[]>): readonly R[] =>
  [...tables.values()].flat(2);

type Spoken<R> = {
  readonly what: Change['what'];
  readonly file: string;
  readonly aspects: (row: R | null, other: R | null) => readonly Aspect[];
  readonly about: (row: R) => Pick<Change, 'id' | 'subject' | 'of'>;
  readonly touches: (match: Match<R>, aspects: readonly Aspect[]) => Touched;
};

const changeOf = <R extends Row>(
  match: Match<R>,
  { what, file, aspects: told, about, touches }: Spoken<R>,
  naming: Both<Naming>,
): readonly Change[] => {
  const row = match.after ?? match.before;
  const aspects = told(match.before, match.after);
  if (row === null || (aspects.length === 0 && match.before !== null && match.after !== null)) return [];
  const own = match.after === null ? naming.before : naming.after;
  const change = becameOf(match.before, match.after);
  const conditions = own.conditions(row.when);
  return [
    {
      what,
      change,
      ...about(row),
      conditions,
      aspects,
      touches: touches(match, aspects),
      file,
      row: row.row,
    },
  ];
};

export const valueChanges = (bodies: Both<RulebookBody>, naming: Both<Naming>): readonly Change[] => {
  const rows = { before: rowsIn(bodies.before.values), after: rowsIn(bodies.after.values) };
  const spoken: Spoken<ValueRow> = {
    what: 'value',
    file: 'values.csv',
    about: ({ operation, planned }) => ({
      id: operation,
      subject: nameIn(naming, operation),
      of: planned.label,
    }),
    aspects: (before, after) =>
      differing([
        ['required', requiredOf(before), requiredOf(after)],
        ['choices', choicesOf(before), choicesOf(after)],
        ['grade', textOf(before?.planned.grade), textOf(after?.planned.grade)],
        ['asked', askedOf(before), askedOf(after)],
        ['source', sourceOf(before?.planned.source), sourceOf(after?.planned.source)],
        ['name', labelOf(before), labelOf(after)],
      ]),
    touches: touchedByValue,
  };
  return matched(rows, ({ operation, planned }) => `${operation} ${planned.characteristic}`).flatMap(
    (match) => changeOf(match, spoken, naming),
  );
};

const nameIn = ({ before, after }: Both<Naming>, id: string): Change['subject'] => {
  const name = after.operation(id);
  return name.en === id ? before.operation(id) : name;
};

const textOf = (text: string | undefined): Told | null => (text === undefined ? null : words(text));

const requiredOf = (row: ValueRow | null): Told | null => {
  if (row === null) return null;
  const { required, unit, kind } = row.planned;
  if (row.asDesign !== null)
    return words(`as the design has it: ${row.asDesign}`, `según el diseño: ${row.asDesign}`);
  if (kind === 'derived') return words(required);
  return { is: 'cell', cell: required, unit, kind };
};

const choicesOf = (row: ValueRow | null): Told | null => textOf(row?.planned.choices?.join(', '));

const askedOf = (row: ValueRow | null): Told | null => {
  if (row === null) return null;
  const { asked, worstOf, from, lotKind, places } = row.planned;
  const parts = [asked, `${worstOf}`, from, lotKind ?? '', ...(places ?? [])].filter((part) => part !== '');
  return words(parts.join(', '));
};

const labelOf = (row: ValueRow | null): Told | null =>
  row === null ? null : { is: 'words', words: row.planned.label };

const sourceOf = (source: Source | undefined): Told | null =>
  source === undefined ? null : words(source.reference === '' ? source.kind : source.reference);

/** Words and sources may be mended freely; limits and what is looked at may not. */
const OF_LIMITS: ReadonlySet<string> = new Set(['required', 'choices', 'grade', 'asked', 'hidden', 'span']);

const isOfLimits = (aspects: readonly Aspect[]): boolean =>
  aspects.some(({ aspect }) => OF_LIMITS.has(aspect));

/** A habit of the plant that only notes is its own; what design or a published text asks for is the design's. */
const touchedByValue = ({ before, after }: Match<ValueRow>, aspects: readonly Aspect[]): Touched => {
  if (!isOfLimits(aspects)) return null;
  const both = [before, after].flatMap((row) => (row === null ? [] : [row]));
  const isOfDesign = both.some(
    ({ asDesign, planned }) => asDesign !== null || !['practice', 'memory'].includes(planned.source.kind),
  );
  if (isOfDesign) return 'design';
  return both.some(({ planned }) => planned.grade !== 'note') ? 'manual' : null;
};

export const coverChanges = (bodies: Both<RulebookBody>, naming: Both<Naming>): readonly Change[] => {
  const rows = { before: rowsIn(bodies.before.covers), after: rowsIn(bodies.after.covers) };
  const hidden = (row: CoverRow | null): Told | null =>
    row === null ? null : words([row.hide.hidden, ...row.hide.otherFace].join(', '));
  const spoken: Spoken<CoverRow> = {
    what: 'cover',
    file: 'covers.csv',
    about: ({ cover, hide }) => ({
      id: cover,
      subject: nameIn(naming, cover),
      of: nameIn(naming, hide.operation),
    }),
    aspects: (before, after) =>
      differing([
        ['hidden', hidden(before), hidden(after)],
        ['grade', textOf(before?.hide.grade), textOf(after?.hide.grade)],
        ['source', sourceOf(before?.hide.source), sourceOf(after?.hide.source)],
      ]),
    touches: (_, aspects) => (isOfLimits(aspects) ? 'manual' : null),
  };
  return matched(rows, ({ cover, hide }) => `${cover} ${hide.operation}`).flatMap((match) =>
    changeOf(match, spoken, naming),
  );
};

export const timeChanges = (bodies: Both<RulebookBody>, naming: Both<Naming>): readonly Change[] => {
  const rows = { before: rowsIn(bodies.before.times), after: rowsIn(bodies.after.times) };
  const span = (row: TimeRow | null): Told | null => {
    if (row === null) return null;
    const { atLeast, atMost } = row.rule;
    const parts = [
      atLeast && `>= ${atLeast.value} ${atLeast.unit}`,
      atMost && `<= ${atMost.value} ${atMost.unit}`,
    ];
    return words(parts.filter((part) => part !== null).join(', '));
  };
  const spoken: Spoken<TimeRow> = {
    what: 'time',
    file: 'times.csv',
    about: ({ operation, rule }) => ({
      id: operation,
      subject: nameIn(naming, operation),
      of: nameIn(naming, rule.since),
    }),
    aspects: (before, after) =>
      differing([
        ['span', span(before), span(after)],
        ['grade', textOf(before?.rule.grade), textOf(after?.rule.grade)],
        ['source', sourceOf(before?.rule.source), sourceOf(after?.rule.source)],
      ]),
    touches: (_, aspects) => (isOfLimits(aspects) ? 'manual' : null),
  };
  return matched(rows, ({ operation, rule }) => `${operation} ${rule.since}`).flatMap((match) =>
    changeOf(match, spoken, naming),
  );
};
