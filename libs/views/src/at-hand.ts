import type { RecordedUnitEvent } from '@libs/record';
import type { Touched } from './change';
import type { AnyView } from './view';

/** Names a detail among those of all views. */
export const handle = (view: AnyView, key: string): string => `${view.name} ${key}`;

/** A detail known to be this; undefined inside: known that there is none yet. */
export type Found = { readonly detail: unknown };

export type AtHand = {
  /** Undefined: not at hand. Asking for one may let another go, so a caller keeps what it was given. */
  readonly find: (name: string) => Found | undefined;
  readonly set: (name: string, detail: unknown) => void;
  readonly clear: () => void;
};

/**
 * The details used last. Two generations, as the writer keeps its states: when the young one is full, the old one goes.
 */
export const detailsAtHand = (limit: number): AtHand => {
  let young = new Map<string, Found>();
  let old = new Map<string, Found>();

  const put = (name: string, found: Found): void => {
    young.set(name, found);
    if (young.size * 2 <= limit) return;
    old = young;
    young = new Map();
  };

  const find = (name: string): Found | undefined => {
    const found = young.get(name);
    if (found !== undefined) return found;

    const aged = old.get(name);
    if (aged !== undefined) put(name, aged);
    return aged;
  };

  return {
    find,
    set: (name, detail) => put(name, { detail }),
    clear: () => {
      young = new Map();
      old = new Map();
    },
  };
};

/** A detail that some events bear on. `isNew`: its stream starts here, so there is none to load. */
export type Wanted = { readonly view: AnyView; readonly key: string; readonly isNew: boolean };

/** An event and a detail it bears on, under the detail's name. */
export type Bearing = {
  readonly name: string;
  readonly view: AnyView;
  readonly key: string;
  readonly event: RecordedUnitEvent;
};

/** Each detail each event bears on, in ledger order. */
export const bearingsOf = (
  events: readonly RecordedUnitEvent[],
  views: readonly AnyView[],
): readonly Bearing[] => {
  const bearings: Bearing[] = [];
  for (const event of events) {
    for (const view of views) {
      for (const key of view.keysOf(event)) bearings.push({ name: handle(view, key), view, key, event });
    }
  }
  return bearings;
};

/** Which details are borne on, each once, but for those that are known already. */
export const wantedBy = (
  bearings: readonly Bearing[],
  known: { readonly has: (name: string) => boolean },
): ReadonlyMap<string, Wanted> => {
  const wanted = new Map<string, Wanted>();
  for (const { name, view, key, event } of bearings) {
    if (known.has(name) || wanted.has(name)) continue;
    wanted.set(name, { view, key, isNew: key === event.stream && event.version === 1 });
  }
  return wanted;
};

/** Applies the events, in ledger order, to details that are all at hand. */
export const applyAll = (
  bearings: readonly Bearing[],
  touched: Map<string, Touched>,
  detailOf: (name: string) => unknown,
): void => {
  for (const { name, view, key, event } of bearings) {
    const known = touched.get(name);
    if (known !== undefined) {
      known.after = view.apply(known.after, event, key);
      continue;
    }
    const before = detailOf(name);
    touched.set(name, { view, key, before, after: view.apply(before, event, key) });
  }
};
