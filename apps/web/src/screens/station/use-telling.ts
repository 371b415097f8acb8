import type { AnswerOf, SentBodyOf } from '@libs/contracts';
import { useState } from 'react';
import type { Trouble } from '../../api/client';
import { tell } from '../../api/outbox';
import type { WebTelling } from '../../api/outbox';
import type { Wanted } from '../../api/paths';
import { useDisplay } from '../../look/display';
import { signal } from '../../ui/signals';

export type Telling = {
  readonly busy: boolean;
  /** Why the record did not take it; what was entered is still in the form. */
  readonly trouble: Trouble | null;
  /** `kept`: nobody answered; the entry waits in the outbox and must not be made again. */
  readonly send: <N extends WebTelling>(
    route: N,
    body: SentBodyOf<N>,
    wanted?: Wanted,
  ) => Promise<AnswerOf<N> | 'kept' | 'turned-down'>;
};

export const useTelling = (): Telling => {
  const { sound } = useDisplay();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);

  const send: Telling['send'] = async (route, body, wanted = {}) => {
    setBusy(true);
    setTrouble(null);
    const result = await tell(route, body, { wanted });
    setBusy(false);
    if (result.ok) {
      signal('accepted', sound);
      return result.answer;
    }
    signal('refused', sound);
    if (result.trouble.kind === 'unreachable') return 'kept';
    setTrouble(result.trouble);
    return 'turned-down';
  };
  return { busy, trouble, send };
};
