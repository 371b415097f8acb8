import type { AnswerOf } from '@libs/contracts';
import { useCallback, useEffect, useState } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';

type Opening = 'linkBook' | 'linkSite';

/** What a link's token opens. */
export const useLink = <N extends Opening>(
  route: N,
  token: string,
): {
  readonly answer: AnswerOf<N> | null;
  readonly trouble: Trouble | null;
  readonly again: () => void;
} => {
  const [answer, setAnswer] = useState<AnswerOf<N> | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const again = useCallback(() => {
    void ask(route, {}, { body: {}, token }).then((result) => {
      setTrouble(result.ok ? null : result.trouble);
      if (result.ok) setAnswer(result.answer);
    });
  }, [route, token]);
  useEffect(again, [again]);
  return { answer, trouble, again };
};
