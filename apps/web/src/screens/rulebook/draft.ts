import { jsonAs } from '../../api/json';

export type Files = { readonly [name: string]: string };

const KEPT_AS = 'studbook.rulebook-draft';

/** On this device only: half-finished work is nobody else's, and a reload loses nothing. */
export const keepDraft = (files: Files): void => localStorage.setItem(KEPT_AS, JSON.stringify(files));
export const dropDraft = (): void => localStorage.removeItem(KEPT_AS);
export const keptDraft = (): Files | null => {
  const text = localStorage.getItem(KEPT_AS);
  return text === null ? null : jsonAs<Files>(text);
};
