import type { AnswerOf, SentBodyOf } from '@libs/contracts';
import { useState } from 'react';
import type { Trouble } from './client';
import { tell } from './outbox';
import type { WebTelling } from './outbox';
import type { Wanted } from './paths';

export type Tell = {
  readonly busy: boolean;
  /** Why the record did not take it. */
  readonly trouble: Trouble | null;
  /** Undefined: it was not taken, or nobody answered and it waits on this device. */
  readonly send: <N extends WebTelling>(
    route: N,
    body: SentBodyOf<N>,
    wanted?: Wanted,
  ) => Promise<AnswerOf<N> | undefined>;
};

/** Telling from a desk: one thing at a time, `after` once the record has it. */
export const useTell = (after: () => void): Tell => {
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const send: Tell['send'] = async (route, body, wanted = {}) => {
    setBusy(true);
    setTrouble(null);
    const result = await tell(route, body, { wanted });
    setBusy(false);
    if (!result.ok) {
      setTrouble(result.trouble);
      return undefined;
    }
    after();
    return result.answer;
  };
  return { busy, trouble, send };
};
