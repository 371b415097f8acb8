import type { AnswerOf } from '@libs/contracts';
import { useRef, useState } from 'react';
import { ask } from '../../api/client';
import type { Answered, Trouble } from '../../api/client';
import { hereModule } from '../../api/here';
import { hereAndNow, newKey } from '../../api/key';
import { shownUnsent } from '../../api/outbox';
import { useDisplay } from '../../look/display';
import { signal } from '../../ui/signals';
import type { Card } from './cards';

type Made = {
  readonly key: string;
  readonly body: {
    readonly serial: string;
    readonly operation: string;
    readonly except: readonly string[];
    readonly station: string;
    readonly occurredAt: string;
  };
  readonly card: Card;
};

/** The server, or this tablet by the same rules where nobody answers. */
const askAnyone = async ({ body, key }: Made): Promise<Answered<AnswerOf<'asking'>>> => {
  const result = await ask('asking', {}, { body, key });
  if (result.ok || result.trouble.kind !== 'unreachable') return result;
  const answer = await (await hereModule()).askedHere(body, shownUnsent());
  return answer === undefined ? result : { ok: true, answer };
};
export type Asking = {
  readonly busy: boolean;
  readonly trouble: Trouble | null;
  readonly mayI: (card: Card) => void;
  /** The same question under the same key: nobody answered it yet. */
  readonly retry: () => void;
};

/** "May I?" of one section. A question nobody answered is worth nothing later, so it is not kept beyond the screen. */
export const useAsking = (
  serial: string,
  station: string,
  onAnswer: (card: Card, answer: AnswerOf<'asking'>) => void,
): Asking => {
  const { sound } = useDisplay();
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const last = useRef<Made | null>(null);

  const put = async (made: Made): Promise<void> => {
    last.current = made;
    setBusy(true);
    setTrouble(null);
    const result = await askAnyone(made);
    setBusy(false);
    if (!result.ok) {
      setTrouble(result.trouble);
      return;
    }
    signal(result.answer.answer === 'cleared' ? 'accepted' : 'refused', sound);
    onAnswer(made.card, result.answer);
  };
  return {
    busy,
    trouble,
    mayI: (card) => {
      const body = {
        serial,
        operation: card.operation,
        except: card.except,
        station,
        occurredAt: hereAndNow(),
      };
      void put({ key: newKey(), body, card });
    },
    retry: () => {
      if (last.current !== null) void put(last.current);
    },
  };
};
