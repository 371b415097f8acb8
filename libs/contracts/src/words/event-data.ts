import type { Finding } from '@libs/judge';

/** An event's own fields, as they stand in the ledger. */
export type EventData = { readonly [field: string]: unknown };

export const textIn = (data: EventData, field: string): string => {
  const value = data[field];
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
};

/** Null where the field is absent or null. */
export const textOrNull = (data: EventData, field: string): string | null =>
  data[field] === undefined || data[field] === null ? null : textIn(data, field);

export const listIn = (data: EventData, field: string): readonly unknown[] => {
  const value: unknown = data[field];
  return Array.isArray(value) ? value : [];
};

export const textsIn = (data: EventData, field: string): readonly string[] =>
  listIn(data, field).filter((item) => typeof item === 'string');

export const isData = (value: unknown): value is EventData => typeof value === 'object' && value !== null;

export const findingsIn = (data: EventData): readonly Finding[] => listIn(data, 'findings').filter(isFinding);

export const isFinding = (value: unknown): value is Finding =>
  isData(value) && typeof value['rule'] === 'string' && isData(value['source']);
