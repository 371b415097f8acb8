import { z } from 'zod';

/** The shapes of the rulebook's files, before what they refer to is looked up. */

/** A log that came without a rulebook may call its stations anything; our own ids are kebab case. */
const Id = z
  .string()
  .max(64)
  .regex(/^\S+(?: \S+)*$/, 'is no id: some characters, single spaces between them only');
const Ids = z.array(Id).default([]);
const Text = z.string().trim().min(1, 'is empty');
const words = { en: Text, es: Text };
const WordsShape = z.strictObject(words);
/** YAML reads an unquoted 2 as a number; a design value is text all the same. */
const Scalar = z.union([z.string(), z.number().transform(String), z.boolean().transform(String)]);
const When = z.record(z.string(), Scalar).default({});

const named = z.strictObject({ id: Id, ...words });

export const PlantShape = z.strictObject({
  name: Text,
  zone: Text,
  enforced: z.boolean(),
  stations: z
    .array(
      z.strictObject({
        id: Id,
        pos: z.number().nullable(),
        kind: z.enum(['line', 'shop', 'yard', 'site']),
        ...words,
        lanes: z.array(Text).default([]),
        facts: Ids,
        lots: Ids,
      }),
    )
    .min(1),
  crews: z.array(named).min(1),
  places: z.array(named).default([]),
  reasons: z.array(named.extend({ for: z.array(z.enum(['hold', 'pull', 'correction'])).min(1) })).default([]),
  details: z.array(named).default([]),
  /** What a value that is named in words is called in each language; one that is not listed stands as it is. */
  texts: z.array(named).default([]),
  /** What the data plate says, line by line, and where each line comes from. */
  plate: z
    .array(
      named.extend({
        from: z.enum(['serial', 'model', 'made', 'labels', 'design', 'recorded', 'text']),
        /** `design`: attributes or details; `recorded`: operations whose values are listed. */
        of: Ids,
        text: WordsShape.optional(),
        /** Only on homes whose design has exactly this. */
        when: When,
      }),
    )
    .default([]),
  attributes: z
    .array(
      named.extend({
        numeric: z.boolean().default(false),
        /** `section`: differs between the sections of one home, and a home's own design does not give it. */
        scope: z.enum(['home', 'section']).default('home'),
        /** Its values go from the least to the most: a design for a later one is good where an earlier one is asked. */
        rising: z.boolean().default(false),
        values: z.array(z.strictObject({ value: Scalar, ...words })).default([]),
      }),
    )
    .default([]),
});
export type PlantFile = z.infer<typeof PlantShape>;

const operationFields = {
  ...words,
  station: Id,
  crew: Id,
  entry: z.enum(['S', 'V', 'I', 'T']),
  scope: z.enum(['section', 'home']),
  hard: z.array(Id),
  hard_source: z.union([Text, z.record(z.string(), Text)]),
  soft: z.array(Id),
  photo: z.enum(['always', 'sample', 'gauge', 'none']),
  instrument: Id.nullable(),
  lots: z.array(Id),
  caution: WordsShape.nullable(),
  gate: z.boolean(),
  label: z.boolean(),
  signers: z.array(z.string().regex(/^(?:crew|role):.+$/, 'is neither crew:ID nor role:NAME')),
  plain: WordsShape.nullable(),
  manual: Text.optional(),
  drawings: z.array(Text).optional(),
};

const VariantShape = z.strictObject(operationFields).partial().extend({ when: When });

export const OperationShape = z.strictObject({
  ...operationFields,
  id: Id,
  scope: operationFields.scope.default('section'),
  hard: Ids,
  hard_source: operationFields.hard_source.default('practice'),
  soft: Ids,
  photo: operationFields.photo.default('none'),
  instrument: Id.nullable().default(null),
  lots: Ids,
  caution: operationFields.caution.default(null),
  gate: z.boolean().default(false),
  label: z.boolean().default(false),
  signers: operationFields.signers.default([]),
  plain: operationFields.plain.default(null),
  when: When,
  variants: z.array(VariantShape).default([]),
});
export type OperationFile = z.infer<typeof OperationShape>;
export const OperationsShape = z.array(OperationShape);

const Cell = z.string();
const Given = z.string().min(1, 'is empty');
const YesNo = z.enum(['yes', 'no']);
const GradeCell = z.enum(['refuse', 'hold', 'note']);
const SourceKind = z.enum(['published', 'practice', 'memory', 'design', 'derived']);
const WholeCell = z.string().regex(/^[1-9]\d{0,3}$/, 'is no whole number above 0');

export const CoverShape = z.object({
  cover: Given,
  hides: Given,
  hidden: z.enum(['any', 'second', 'lift']),
  other_face: Cell,
  grade: GradeCell,
  source_kind: SourceKind,
  source: Cell,
});
export type CoverCells = z.infer<typeof CoverShape>;

export const ValueShape = z.object({
  operation: Given,
  characteristic: Given,
  en: Given,
  es: Given,
  kind: z.enum(['measure', 'count', 'choice', 'yes-no', 'text', 'date', 'derived']),
  unit: Cell,
  required: Cell,
  as_design: Cell,
  relation: Cell,
  choices: Cell,
  grade: GradeCell,
  from: z.enum(['entry', 'lot', 'instrument']),
  lot_kind: Cell,
  asked: z.enum(['always', 'where-any']),
  worst_of: WholeCell,
  source_kind: SourceKind,
  source: Cell,
  on: YesNo,
  /** Where it is read: at each, or at so many of them drawn by lot. */
  places: Cell.optional(),
});
export type ValueCells = z.infer<typeof ValueShape>;

export const TimeShape = z.object({
  operation: Given,
  since: Given,
  at_least: Cell,
  at_most: Cell,
  unit: Given,
  grade: GradeCell,
  source_kind: SourceKind,
  source: Cell,
});
export type TimeCells = z.infer<typeof TimeShape>;

export const CountyShape = z.object({ county: Given });

export const NamedShape = z.object({ id: Given, en: Given, es: Given });
export const LotKindShape = z.object({
  kind: Given,
  en: Given,
  es: Given,
  traced: YesNo,
  /** Kinds it may be used in place of, as approved. */
  instead_of: Cell.optional(),
});
export const InstrumentKindShape = z.object({ kind: Given, en: Given, es: Given, calibrated: YesNo });
export const FaultShape = z.object({
  component: Given,
  symptom: Given,
  causes: Cell,
  elsewhere: Cell,
  caught_by: Cell,
});
