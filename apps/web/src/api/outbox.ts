import type { AnswerOf, PlantTelling, SentBodyOf } from '@libs/contracts';
import { useSyncExternalStore } from 'react';
import { ask } from './client';
import type { Answered } from './client';
import { jsonAs } from './json';
import { hereAndNow, newKey } from './key';
import type { Wanted, WebRoute } from './paths';

export type WebTelling = PlantTelling & WebRoute;
/** One entry that was made and not yet answered. Its key never changes, so that sending twice records once. */
export type Unsent = {
  readonly key: string;
  readonly route: WebTelling;
  readonly wanted: Wanted;
  readonly body: object;
  readonly madeAt: string;
  /** It was sent and nobody answered. */
  readonly stranded: boolean;
};

const KEPT_AS = 'studbook.unsent';

const read = (): readonly Unsent[] => {
  const text = localStorage.getItem(KEPT_AS);
  const kept = text === null ? [] : jsonAs<readonly Unsent[]>(text);
  // What is found here when the page opens was never answered.
  return kept.map((entry) => ({ ...entry, stranded: true }));
};

let unsent: readonly Unsent[] = read();
const listeners = new Set<() => void>();
const keep = (next: readonly Unsent[]): void => {
  unsent = next;
  localStorage.setItem(KEPT_AS, JSON.stringify(next));
  listeners.forEach((listener) => listener());
};
const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};

export const useUnsent = (): readonly Unsent[] => useSyncExternalStore(subscribe, () => unsent);

const deliver = async <N extends WebTelling>(route: N, entry: Unsent): Promise<Answered<AnswerOf<N>>> => {
  const result = await ask(route, entry.wanted, { body: entry.body, key: entry.key });
  const answered = result.ok || result.trouble.kind === 'problem';
  const others = unsent.filter((other) => other.key !== entry.key);
  keep(answered ? others : [...others, { ...entry, stranded: true }]);
  return result;
};

/** Tell the record something. Kept on this device until the server has answered, under one key. */
export const tell = <N extends WebTelling>(
  route: N,
  body: SentBodyOf<N>,
  wanted: Wanted = {},
): Promise<Answered<AnswerOf<N>>> => {
  const madeAt = hereAndNow();
  const entry: Unsent = {
    key: newKey(),
    route,
    wanted,
    body: { occurredAt: madeAt, ...body },
    madeAt,
    stranded: false,
  };
  keep([...unsent, entry]);
  return deliver(route, entry);
};

/** Send again what was not answered, oldest first; stops at the first that still finds nobody. */
export const sendAgain = async (): Promise<readonly { entry: Unsent; result: Answered<object> }[]> => {
  const told: { entry: Unsent; result: Answered<object> }[] = [];
  for (const entry of [...unsent]) {
    const result = await deliver(entry.route, entry);
    told.push({ entry, result });
    if (!result.ok && result.trouble.kind === 'unreachable') break;
  }
  return told;
};
