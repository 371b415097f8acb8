import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { Mark } from '../../ui/mark';
import type { MarkName } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { failureSays } from './failure';

type Subscription = AnswerOf<'feed'>['subscriptions'][number];

const STANDINGS = {
  'up-to-date': { mark: 'proven', word: 'feed.up-to-date' },
  behind: { mark: 'due', word: 'feed.behind' },
  failing: { mark: 'held', word: 'feed.failing' },
  gone: { mark: 'refused', word: 'feed.gone' },
} as const satisfies Record<Subscription['standing'], { mark: MarkName; word: WordKey }>;

const KINDS = ['alarms', 'checkpoints', 'clocks'] as const;
const KIND_WORDS = {
  alarms: 'feed.alarms',
  checkpoints: 'feed.checkpoints',
  clocks: 'feed.clocks',
} as const;

const useWantsSay = ({ wants }: Subscription): string => {
  const { t } = useSpeech();
  const events = wants.events === 'all' ? [t('feed.all-events')] : wants.events;
  return [...events, ...KINDS.flatMap((kind) => (wants[kind] ? [t(KIND_WORDS[kind])] : []))].join(', ');
};

const Standing = ({ one }: { readonly one: Subscription }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const { mark, word } = STANDINGS[one.standing];
  return (
    <>
      <p className="row">
        <Mark name={mark} size={20} />
        <span>{t(word, { count: one.behind })}</span>
        {one.deliveredAt !== null && (
          <span className="quiet">{t('feed.delivered', { at: times.moment(one.deliveredAt) })}</span>
        )}
      </p>
      {one.trouble !== null && (
        <p>
          {failureSays(one.trouble, t)}{' '}
          {one.nextAt !== null && t('feed.next', { at: times.moment(one.nextAt) })}
        </p>
      )}
    </>
  );
};

type RowProps = { readonly one: Subscription; readonly changed: () => void };

const Actions = ({ one, changed }: RowProps): ReactNode => {
  const { t } = useSpeech();
  const [says, setSays] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [busy, setBusy] = useState(false);
  const wanted = { subscription: one.id };
  const test = async (): Promise<void> => {
    setBusy(true);
    const result = await ask('feedTest', wanted, { body: {} });
    setBusy(false);
    setTrouble(result.ok ? null : result.trouble);
    if (!result.ok) return;
    const { delivered, why } = result.answer;
    setSays(delivered ? t('feed.test-taken') : failureSays(why ?? '', t));
  };
  const act = async (route: 'feedTryNow' | 'feedEnd'): Promise<void> => {
    setBusy(true);
    const result = await ask(route, wanted, { body: {} });
    setBusy(false);
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) changed();
  };
  return (
    <div className="stack tight">
      <div className="choices">
        <button type="button" className="button" disabled={busy} onClick={() => void test()}>
          {t('feed.test')}
        </button>
        {(one.standing === 'failing' || one.standing === 'gone') && (
          <button type="button" className="button" disabled={busy} onClick={() => void act('feedTryNow')}>
            {t('feed.try-now')}
          </button>
        )}
        <button type="button" className="button" disabled={busy} onClick={() => void act('feedEnd')}>
          {t('feed.end')}
        </button>
      </div>
      {says !== null && <p role="status">{says}</p>}
      {trouble !== null && <TroubleNotice trouble={trouble} />}
    </div>
  );
};

const Row = (props: RowProps): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const { one } = props;
  return (
    <li className="stack tight">
      <p>
        <strong className="mono token">{one.target}</strong>
      </p>
      <p>{useWantsSay(one)}</p>
      <p className="quiet small">{t('feed.made', { by: one.by, at: times.moment(one.madeAt) })}</p>
      <Standing one={one} />
      <Actions {...props} />
    </li>
  );
};

/** Every subscription: to whom, what, and how it goes. */
export const Subscriptions = ({
  subscriptions,
  changed,
}: {
  readonly subscriptions: readonly Subscription[];
  readonly changed: () => void;
}): ReactNode => {
  if (subscriptions.length === 0) return null;
  return (
    <ul className="access-list">
      {subscriptions.map((one) => (
        <Row key={one.id} one={one} changed={changed} />
      ))}
    </ul>
  );
};
