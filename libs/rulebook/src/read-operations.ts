import type { Source } from '@libs/judge';
import type { OperationFields, OperationRow } from './body';
import { ALL_DUE } from './body';
import type { Complain, ComplainHere } from './complain';
import { here } from './complain';
import type { Known } from './known';
import { checkKnown, checkUnique } from './known';
import { readWhen } from './read-when';
import type { RulebookFiles } from './rulebook';
import type { OperationFile } from './shapes';
import { OperationsShape } from './shapes';
import { sourceOfEdge } from './source';
import { readYaml } from './yaml-file';

/** An operation as written, and where. */
export type WrittenOperation = { readonly file: string; readonly row: number; readonly is: OperationFile };

/** All `operations*.yaml`, in the order of their names. */
export const readOperations = (files: RulebookFiles, complain: Complain): readonly WrittenOperation[] => {
  const names = Object.keys(files)
    .filter((name) => /^operations.*\.yaml$/.test(name))
    .sort();
  if (names.length === 0) {
    complain({
      file: 'operations.yaml',
      row: 1,
      column: null,
      says: 'is missing: a rulebook lists its operations',
    });
  }
  return names.flatMap((file) => {
    const read = readYaml(file, files[file] ?? '', OperationsShape, complain);
    return read === undefined ? [] : read.data.map((is, index) => ({ file, row: read.rowOf([index]), is }));
  });
};

export const compileOperations = (
  written: readonly WrittenOperation[],
  known: Known,
  complain: Complain,
): readonly OperationRow[] => {
  checkUnique(
    written,
    ({ is }) => is.id,
    (one) => here(complain, one.file, one.row),
    'id',
  );
  return written.map((one) => compile(one, known, here(complain, one.file, one.row)));
};

const compile = ({ file, row, is }: WrittenOperation, known: Known, complain: ComplainHere): OperationRow => {
  const { when, variants, ...fields } = is;
  checkFields(is.id, fields, known, complain);
  return {
    id: is.id,
    file,
    row,
    when: readWhen(when, known.domains, complain),
    fields: fieldsOf(fields, `${file}:${row}`),
    variants: variants.map(({ when: variantWhen, ...others }) => {
      checkFields(is.id, others, known, complain);
      return {
        when: readWhen(variantWhen, known.domains, complain),
        fields: variantFields(others, is, `${file}:${row}`),
      };
    }),
  };
};

type Fields = Omit<OperationFile, 'when' | 'variants'>;

const fieldsOf = (is: Fields, row: string): OperationFields => {
  const { id: _, en, es, hard_source, ...fields } = is;
  return { ...fields, name: { en, es }, sourceOf: sourcesOf(hard_source, row) };
};

const sourcesOf =
  (source: Fields['hard_source'], row: string) =>
  (required: string): Source =>
    sourceOfEdge(typeof source === 'string' ? source : (source[required] ?? 'practice'), row);

type Variant = Omit<OperationFile['variants'][number], 'when'>;

/** Only what a variant names is replaced; a name in one language keeps the other. */
const variantFields = (variant: Variant, is: Fields, row: string): Partial<OperationFields> => {
  const { en = is.en, es = is.es, hard_source, ...fields } = variant;
  return {
    ...fields,
    name: { en, es },
    ...(hard_source === undefined ? {} : { sourceOf: sourcesOf(hard_source, row) }),
  };
};

const checkFields = (id: string, fields: Partial<Fields>, known: Known, complain: ComplainHere): void => {
  const { hard = [], soft = [], hard_source } = fields;
  checkKnown(
    hard.filter((one) => one !== ALL_DUE),
    ['operation', known.operations],
    'hard',
    complain,
  );
  checkKnown(soft, ['operation', known.operations], 'soft', complain);
  checkMeans(fields, known, complain);
  if (hard.includes(id) || soft.includes(id)) complain('hard', `\`${id}\` cannot need itself`);
  if (typeof hard_source !== 'object') return;
  Object.keys(hard_source)
    .filter((required) => !hard.includes(required))
    .forEach((required) => complain('hard_source', `\`${required}\` is not among hard`));
};

/** Where, by whom and with what. */
const checkMeans = (fields: Partial<Fields>, known: Known, complain: ComplainHere): void => {
  const { station, crew, instrument, lots = [], signers = [] } = fields;
  checkKnown(oneOrNone(station), ['station', known.stations], 'station', complain);
  checkKnown(oneOrNone(crew), ['crew', known.crews], 'crew', complain);
  checkKnown(lots, ['kind of lot', known.lotKinds], 'lots', complain);
  checkKnown(oneOrNone(instrument), ['kind of instrument', known.instrumentKinds], 'instrument', complain);
  checkKnown(crewsIn(signers), ['crew', known.crews], 'signers', complain);
};

const oneOrNone = (id: string | null | undefined): readonly string[] =>
  id === null || id === undefined ? [] : [id];

const crewsIn = (signers: readonly string[]): readonly string[] =>
  signers.flatMap((signer) => (signer.startsWith('crew:') ? [signer.slice('crew:'.length)] : []));
