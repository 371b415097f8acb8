import type { AnswerOf } from '@libs/contracts';
import { useCallback, useEffect, useState } from 'react';
import type { Trouble } from './client';
import { jsonAs } from './json';
import { askOrHere } from './or-here';
import type { Wanted, WebRoute } from './paths';

export type Question<A> = {
  readonly answer: A | null;
  readonly trouble: Trouble | null;
  readonly waiting: boolean;
  /** Ask again; the old answer stays in sight until the new one is there. */
  readonly again: () => void;
};

type Kept<A> = { readonly of: string; readonly answer: A | null; readonly trouble: Trouble | null };

/** Asks the server once for each distinct question; `null` asks nothing. */
export const useQuestion = <N extends WebRoute>(route: N, wanted: Wanted | null): Question<AnswerOf<N>> => {
  const of = wanted === null ? '' : JSON.stringify(wanted);
  const [round, setRound] = useState(0);
  const [kept, setKept] = useState<Kept<AnswerOf<N>>>({ of: '', answer: null, trouble: null });

  useEffect(() => {
    if (of === '') return undefined;
    const stop = new AbortController();
    const asked = jsonAs<Wanted>(of);
    void askOrHere(route, asked, { signal: stop.signal }).then((result) => {
      if (stop.signal.aborted) return;
      // An answer already on the screen is worth more than the news that it cannot be renewed.
      setKept((before) =>
        result.ok
          ? { of, answer: result.answer, trouble: null }
          : { of, answer: before.of === of ? before.answer : null, trouble: result.trouble },
      );
    });
    return () => stop.abort();
  }, [route, of, round]);

  const again = useCallback(() => setRound((before) => before + 1), []);
  const fresh = kept.of === of && of !== '';
  return {
    answer: fresh ? kept.answer : null,
    trouble: fresh ? kept.trouble : null,
    waiting: of !== '' && !fresh,
    again,
  };
};
