import { useEffect, useRef } from 'react';

/** A form that waits for a lot or an instrument takes the next scan, unless it is a section's serial. */
type Taker = (text: string) => void;
const takers: Taker[] = [];

export const takenByForm = (text: string): boolean => {
  const taker = takers.at(-1);
  taker?.(text);
  return taker !== undefined;
};

export const useScanTarget = (take: Taker): void => {
  const latest = useRef(take);
  useEffect(() => {
    latest.current = take;
  });
  useEffect(() => {
    const taker: Taker = (text) => latest.current(text);
    takers.push(taker);
    return () => {
      takers.splice(takers.indexOf(taker), 1);
    };
  }, []);
};
