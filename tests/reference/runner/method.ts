import type { Case } from './case-file';

/** What a method gives for a case, under the names the case files use. */
export type Figures = Readonly<Record<string, unknown>>;

export type Method = {
  readonly name: string;
  readonly reads: (one: Case) => boolean;
  /** `find`: another case, for those that name one. */
  readonly figures: (one: Case, find: (id: string) => Case) => Figures;
  /** Where the printed figures go by another name, or are of another kind, than the computed ones. */
  readonly printed?: (one: Case, figures: Figures) => Figures;
  /** Values that their tool finds by a search that stops early: how near they are, and why. */
  readonly searched?: Readonly<Record<string, (actual: number, expected: number) => boolean>>;
  /** How far printed figures of this kind are off, relative, where they come from an approximation. */
  readonly printedWithin?: number;
};

export const has = (one: Case, ...keys: readonly string[]): boolean =>
  keys.every((key) => one.input[key] !== undefined);

/** Case files count from 1. */
export const fromOne = (indices: readonly number[]): readonly number[] => indices.map((at) => at + 1);
