import type { AnswerOf } from '@libs/contracts';
import { useEffect, useRef, useSyncExternalStore } from 'react';
import { jsonAs } from './json';

export type News = AnswerOf<'stream'>;
type Heard = (news: News | null) => void;

/** After a refusal the browser gives up by itself; this long is short for a person and long for a server. */
const TRY_AGAIN_MS = 3_000;

let source: EventSource | null = null;
let connected = false;
let retry: ReturnType<typeof setTimeout> | undefined;
const hearers = new Set<Heard>();
const watchers = new Set<() => void>();

const setConnected = (next: boolean): void => {
  connected = next;
  watchers.forEach((watch) => watch());
};

const open = (): void => {
  clearTimeout(retry);
  source = new EventSource('/api/stream');
  source.addEventListener('open', () => {
    setConnected(true);
    // Whatever happened while nobody listened: each screen asks anew, and so has caught up.
    hearers.forEach((hear) => hear(null));
  });
  source.addEventListener('ledger', (event: MessageEvent<string>) => {
    const news = jsonAs<News>(event.data);
    hearers.forEach((hear) => hear(news));
  });
  source.addEventListener('error', () => {
    setConnected(false);
    if (source?.readyState === EventSource.CLOSED) retry = setTimeout(open, TRY_AGAIN_MS);
  });
};
const close = (): void => {
  clearTimeout(retry);
  source?.close();
  source = null;
  connected = false;
};

const watch = (watcher: () => void): (() => void) => {
  watchers.add(watcher);
  return () => watchers.delete(watcher);
};

/** Hears news while mounted; `null` means "ask anew, you may have missed some". Says whether we are connected. */
export const useLive = (hear: Heard): boolean => {
  const latest = useRef(hear);
  useEffect(() => {
    latest.current = hear;
  });
  useEffect(() => {
    const hearer: Heard = (news) => latest.current(news);
    hearers.add(hearer);
    if (source === null) open();
    return () => {
      hearers.delete(hearer);
      if (hearers.size === 0) close();
    };
  }, []);
  return useSyncExternalStore(watch, () => connected);
};
