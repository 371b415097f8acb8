import { asPrinted, differences, exactly } from './compare';
import type { Case } from './case-file';
import type { Figures, Method } from './method';
import { METHODS } from './methods';

export type Outcome = {
  readonly id: string;
  readonly method: string | null;
  readonly failures: readonly string[];
  /** Keys of the case that the method has no figure for. */
  readonly notCompared: readonly string[];
};

/** What is printed but is no figure to compare: how it was rounded, and what was rounded before it was used. */
const NOT_FIGURES = ['digits', 'textbook_rounded', 'deciding_comparison'];

export const runCase = (one: Case, all: readonly Case[]): Outcome => {
  const method = METHODS.find(({ reads }) => reads(one));
  if (method === undefined) {
    return {
      id: one.id,
      method: null,
      failures: [`no method here reads a case like this (${one.file})`],
      notCompared: [],
    };
  }
  try {
    return compared(one, method, all);
  } catch (thrown) {
    const reason = thrown instanceof Error ? thrown.message : String(thrown);
    return {
      id: one.id,
      method: method.name,
      failures: [`${method.name} stopped: ${reason}`],
      notCompared: [],
    };
  }
};

const compared = (one: Case, method: Method, all: readonly Case[]): Outcome => {
  const find = (id: string): Case => {
    const found = all.find((each) => each.id === id);
    if (found === undefined) throw new Error(`it names a case ${id} that is in no folder here`);
    return found;
  };
  const figures = method.figures(one, find);
  const printed = { ...figures, ...method.printed?.(one, figures) };
  const known = (of: Figures, key: string): boolean => of[key] !== undefined;
  const computedKeys = Object.keys(one.computed);
  const printedKeys = Object.keys(one.published).filter((key) => !NOT_FIGURES.includes(key));
  const failures = [
    ...computedKeys
      .filter((key) => known(figures, key))
      .flatMap((key) => computedWrong(one, method, figures, key)),
    ...printedKeys
      .filter((key) => known(printed, key))
      .flatMap((key) => printedWrong(one, method, printed, key)),
  ];
  const notCompared = [
    ...computedKeys.filter((key) => !known(figures, key)),
    ...printedKeys.filter((key) => !known(printed, key)).map((key) => `published ${key}`),
  ];
  const nothing = notCompared.length > 0 && notCompared.length === computedKeys.length + printedKeys.length;
  return {
    id: one.id,
    method: method.name,
    failures: nothing ? [`${method.name} gives none of: ${notCompared.join(', ')}`] : failures,
    notCompared,
  };
};

const computedWrong = (one: Case, method: Method, figures: Figures, key: string): readonly string[] =>
  differences(figures[key], one.computed[key], method.searched?.[key] ?? exactly, key);

const printedWrong = (one: Case, method: Method, figures: Figures, key: string): readonly string[] => {
  const { digits } = one.published;
  const near = asPrinted(typeof digits === 'number' ? digits : undefined, statedTolerance(one.notes));
  const within = method.printedWithin;
  const roughly = (actual: number, expected: number): boolean =>
    near(actual, expected) || (within !== undefined && Math.abs(actual / expected - 1) <= within);
  return differences(figures[key], one.published[key], roughly, `published ${key}`);
};

/** A case may say in its notes how far its printed figures are off: "tolerance 0.0051". */
const statedTolerance = (notes: readonly string[]): number | undefined => {
  const [, stated] = /tolerance (\d[\d.]*(?:e-?\d+)?)/i.exec(notes.join(' ')) ?? [];
  return stated === undefined ? undefined : Number(stated.replace(/[.]$/, ''));
};
