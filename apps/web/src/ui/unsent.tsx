import { Suspense, lazy, useEffect, useState } from 'react';
import type { ReactNode } from 'react';
import { sendAgain, useDiffering, useUnsent } from '../api/outbox';
import type { Unsent } from '../api/outbox';
import { useSession } from '../session/session';
import { useTimes } from '../words/use-times';
import { useSpeech } from '../words/words';
import { Mark } from './mark';
import { photosModule, useWaitingPhotos } from './use-waiting-photos';

const QueueList = lazy(() => import('./queue-list').then((m) => ({ default: m.QueueList })));

/** Soon after the network is back; long enough for a battery. */
const TRY_AGAIN_MS = 5_000;

/** While something waits, or nobody answers: asked again until somebody does. */
const useSending = (waiting: number): void => {
  const { state, cutOff, renew } = useSession();
  const active = state === 'signed-in' && (cutOff || waiting > 0);
  useEffect(() => {
    if (!active) return undefined;
    // Who is there is asked first: a session may have ended meanwhile. Its answer sends what waits.
    const again = (): void => void (cutOff ? renew() : sendAgain());
    const timer = setInterval(again, TRY_AGAIN_MS);
    window.addEventListener('online', again);
    return () => {
      clearInterval(timer);
      window.removeEventListener('online', again);
    };
  }, [active, cutOff, renew]);
};

/** In one line: how many, since when, and whose. */
const Waiting = ({ entries }: { readonly entries: readonly Unsent[] }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const { me } = useSession();
  const [oldest] = entries;
  const others = entries.filter(({ person }) => person !== null && person !== me?.actor).length;
  return (
    <p>
      {t('unsent', { count: entries.length })}
      {oldest !== undefined && ` ${t('queue.oldest', { time: times.moment(oldest.madeAt) })}`}
      {others > 0 && ` ${t('queue.others', { count: others })}`}
    </p>
  );
};

const SendNow = (): ReactNode => {
  const { t } = useSpeech();
  const [sending, setSending] = useState(false);
  const send = async (): Promise<void> => {
    setSending(true);
    await sendAgain();
    await (await photosModule()).sendPhotosAgain();
    setSending(false);
  };
  return (
    <button type="button" className="button primary" disabled={sending} onClick={() => void send()}>
      {t('send-again')}
    </button>
  );
};

/** What there is to say, the gravest last. */
const Lines = ({ cutOff, waiting, refused, differing }: Counts): ReactNode => {
  const { t } = useSpeech();
  return (
    <>
      {cutOff && <p>{t('queue.cut-off')}</p>}
      {waiting.length > 0 && <Waiting entries={waiting} />}
      {differing > 0 && <p>{t('queue.differing', { count: differing })}</p>}
      {refused > 0 && <p>{t('queue.refused', { count: refused })}</p>}
    </>
  );
};
type Counts = {
  readonly cutOff: boolean;
  readonly waiting: readonly Unsent[];
  readonly refused: number;
  readonly differing: number;
};

const useCounts = (): Counts => {
  const { cutOff } = useSession();
  const unsent = useUnsent();
  const differing = useDiffering().length;
  return {
    cutOff,
    waiting: unsent.filter(({ state }) => state === 'waiting'),
    refused: unsent.filter(({ state }) => state === 'refused').length,
    differing,
  };
};

/** Entries that the record has not taken yet. They stay on this device, under their first key, until it has. */
export const UnsentNotice = (): ReactNode => {
  const { t } = useSpeech();
  const counts = useCounts();
  const { cutOff, waiting, refused, differing } = counts;
  const [open, setOpen] = useState(false);
  useWaitingPhotos();
  useSending(waiting.length);

  const listed = waiting.length + refused + differing;
  if (listed === 0 && !cutOff) return null;
  return (
    <section className="unsent stack tight no-print" aria-label={t('queue')}>
      <div className={refused > 0 ? 'notice refused' : 'notice due'} role="status">
        <Mark name={refused > 0 ? 'refused' : 'due'} size={32} />
        <div className="grow stack tight">
          <Lines {...counts} />
          {listed > 0 && (
            <div className="row">
              {waiting.length > 0 && <SendNow />}
              <button type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
                {t('queue.show')}
              </button>
            </div>
          )}
        </div>
      </div>
      {open && listed > 0 && (
        <Suspense fallback={null}>
          <QueueList />
        </Suspense>
      )}
    </section>
  );
};
