import type { ValueKind, Words } from '@libs/judge';

/** What is told of a thing: a requirement as its cell has it, or words. */
export type Told =
  | { readonly is: 'cell'; readonly cell: string; readonly unit: string | null; readonly kind: ValueKind }
  /** `key`: what it is, whatever it is called; left out: the words themselves. */
  | { readonly is: 'words'; readonly words: Words; readonly key?: string };

/** One side of a thing that is different; null: it was not there, or is no longer. */
export type Aspect = {
  readonly aspect: AspectName;
  readonly before: Told | null;
  readonly after: Told | null;
};

export type AspectName =
  | 'required'
  | 'choices'
  | 'grade'
  | 'asked'
  | 'source'
  | 'name'
  | 'station'
  | 'crew'
  | 'entry'
  | 'requires'
  | 'expects'
  | 'photo'
  | 'instrument'
  | 'lots'
  | 'caution'
  | 'gate'
  | 'signers'
  | 'documents'
  | 'plain'
  | 'when'
  | 'hidden'
  | 'span'
  | 'else';

/** Where a row holds: `wind zone: wind zone I`. A figure without listed values is told by its cell. */
export type Condition = {
  readonly attribute: Words;
  readonly values: readonly Words[];
  readonly cell: string | null;
};

/** What the inspection agency has approved before, and a change of it needs its approval again (24 CFR 3282.361). */
export type Touched = 'design' | 'manual' | null;

/** One difference between two rulebooks. */
export type Change = {
  readonly what: 'value' | 'operation' | 'cover' | 'time' | 'county' | 'list' | 'plant';
  readonly change: 'added' | 'dropped' | 'changed';
  /** The operation, or whatever else it is about. */
  readonly id: string;
  readonly subject: Words;
  /** Its characteristic, or the operation it covers or comes after. */
  readonly of: Words | null;
  readonly conditions: readonly Condition[];
  readonly aspects: readonly Aspect[];
  readonly touches: Touched;
  /** Where it stands in the files; of what was dropped, in those before. */
  readonly file: string;
  readonly row: number | null;
};

export const words = (en: string, es: string = en): Told => ({ is: 'words', words: { en, es } });

/** The aspects in which two things differ. */
export const differing = (
  pairs: readonly (readonly [AspectName, Told | null, Told | null])[],
): readonly Aspect[] =>
  pairs.flatMap(([aspect, before, after]) =>
    keyOf(before) === keyOf(after) ? [] : [{ aspect, before, after }],
  );

const keyOf = (told: Told | null): string =>
  told !== null && told.is === 'words' && told.key !== undefined ? told.key : JSON.stringify(told);

/** What became of a thing that two rulebooks may have; null in neither. */
export const becameOf = (before: unknown, after: unknown): Change['change'] => {
  if (before === null || before === undefined) return 'added';
  return after === null || after === undefined ? 'dropped' : 'changed';
};
