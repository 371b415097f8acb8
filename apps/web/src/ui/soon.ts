import { useCallback, useEffect, useRef } from 'react';

/** News come in bursts: one sign-off is a dozen events. Asking once, a moment later, answers for all of them. */
const SOON_MS = 250;

export const useSoon = (act: () => void, afterMs: number = SOON_MS): (() => void) => {
  const timer = useRef<ReturnType<typeof setTimeout> | null>(null);
  const latest = useRef(act);
  useEffect(() => {
    latest.current = act;
  });
  useEffect(
    () => () => {
      if (timer.current !== null) clearTimeout(timer.current);
    },
    [],
  );
  return useCallback(() => {
    timer.current ??= setTimeout(() => {
      timer.current = null;
      latest.current();
    }, afterMs);
  }, [afterMs]);
};
