import type { AnswerOf, PlantTelling } from '@libs/contracts';
import type { Trouble } from '../api/client';
import type { Wanted, WebRoute } from '../api/paths';

export type WebTelling = PlantTelling & WebRoute;
export type Judged = AnswerOf<'work'>['findings'][number];

/**
 * One entry that was made on this device and that the record has not taken yet. Its key never changes, so that
 * sending twice records once; its body never changes either, so that it says what was told when it was told.
 */
export type Unsent = {
  readonly key: string;
  /** Order of making on this device: they are sent in this order. */
  readonly seq: number;
  /** Who told it: it is sent under nobody else's name. */
  readonly person: string | null;
  readonly route: WebTelling;
  readonly wanted: Wanted;
  readonly body: { readonly serial?: string; readonly operation?: string };
  readonly madeAt: string;
  /** `new`: on its way. `waiting`: nobody answered. `refused`: the record did not take it, and somebody has to look. */
  readonly state: 'new' | 'waiting' | 'refused';
  readonly trouble: Trouble | null;
  /** What was said of it here, before it was sent; null: it was not judged here. */
  readonly here: readonly Judged[] | null;
};

/** The record took it, and found in it something else than this device had. */
export type Differing = {
  readonly key: string;
  readonly route: WebTelling;
  readonly serial: string | null;
  readonly operation: string | null;
  readonly madeAt: string;
  readonly onlyThere: readonly Judged[];
  readonly onlyHere: readonly Judged[];
};

const mark = ({ rule, grade, operation, characteristic = '' }: Judged): string =>
  [rule, grade, operation, characteristic].join(' ');

const without = (judged: readonly Judged[], others: readonly Judged[]): readonly Judged[] => {
  const known = new Set(others.map(mark));
  return judged.filter((one) => !known.has(mark(one)));
};

/** Undefined where both found the same. */
export const differing = (entry: Unsent, there: readonly Judged[]): Differing | undefined => {
  if (entry.here === null) return undefined;
  const onlyThere = without(there, entry.here);
  const onlyHere = without(entry.here, there);
  if (onlyThere.length === 0 && onlyHere.length === 0) return undefined;
  const { key, route, body, madeAt } = entry;
  return {
    key,
    route,
    serial: body.serial ?? null,
    operation: body.operation ?? null,
    madeAt,
    onlyThere,
    onlyHere,
  };
};
