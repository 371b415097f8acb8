import type { AnswerOf } from '@libs/contracts';
import type { MarkName } from '../../ui/mark';

export type Entry = AnswerOf<'history'>['entries'][number];
export type Filter = 'all' | 'findings' | 'corrections' | 'refusals' | 'defects' | 'moves';
export const FILTERS = [
  'all',
  'findings',
  'corrections',
  'refusals',
  'defects',
  'moves',
] as const satisfies readonly Filter[];

const REFUSALS = new Set(['AskingRefused', 'HoldPlaced', 'HoldReleased']);
const DEFECTS = new Set(['DefectRecorded', 'ReworkDone', 'DefectVerified', 'DefectClosed']);
const CORRECTIONS = new Set(['WorkWithdrawn', 'WorkCorrected']);
const MOVES = new Set([
  'SectionStarted',
  'SectionMoved',
  'SectionPulled',
  'SectionReturned',
  'SectionShipped',
  'HomeStarted',
]);

const KEEPS: { readonly [F in Filter]: (entry: Entry) => boolean } = {
  all: () => true,
  findings: ({ findings }) => findings.length > 0,
  corrections: ({ type, correctedBy }) => CORRECTIONS.has(type) || correctedBy.length > 0,
  refusals: ({ type }) => REFUSALS.has(type),
  defects: ({ type }) => DEFECTS.has(type),
  moves: ({ type }) => MOVES.has(type),
};
export const keptBy = (filter: Filter, serial: string | null, entries: readonly Entry[]): readonly Entry[] =>
  entries.filter((entry) => KEEPS[filter](entry) && (serial === null || entry.serial === serial));

const MARKS: Readonly<Record<string, MarkName>> = {
  WorkRecorded: 'proven',
  TestRecorded: 'proven',
  StationSignedOff: 'proven',
  AskingCleared: 'proven',
  AskingRefused: 'refused',
  DefectRecorded: 'refused',
  ReworkDone: 'open-at-places',
  DefectVerified: 'proven',
  DefectClosed: 'proven',
  HoldPlaced: 'held',
  HoldReleased: 'proven',
  WorkWithdrawn: 'corrected',
  WorkCorrected: 'corrected',
  LabelAffixed: 'proven',
};

export const markOf = (entry: Entry): MarkName => {
  if (entry.correctedBy.length > 0) return 'corrected';
  if (entry.findings.some(({ grade }) => grade !== 'note') && entry.type !== 'AskingRefused') return 'held';
  return MARKS[entry.type] ?? 'note';
};

type Value = { readonly characteristic: string; readonly value: string; readonly unit: string | null };
const isValue = (raw: unknown): raw is Value =>
  typeof raw === 'object' &&
  raw !== null &&
  'characteristic' in raw &&
  'value' in raw &&
  typeof raw.value === 'string';

/** The values an entry carries, if it is of a kind that does. */
export const valuesOf = ({ data }: Entry): readonly Value[] => {
  const values = data['values'];
  return Array.isArray(values) ? values.filter(isValue) : [];
};

/** SHA-256 of each photo the entry names. */
export const photosOf = ({ data }: Entry): readonly string[] => {
  const photos = data['photos'];
  return Array.isArray(photos) ? photos.filter((photo) => typeof photo === 'string') : [];
};
