import { useState } from 'react';
import type { ReactNode } from 'react';
import type { Trouble } from '../api/client';
import { sendAgain, useUnsent } from '../api/outbox';
import { useSpeech } from '../words/words';
import { Mark } from './mark';
import { TroubleNotice } from './trouble';
import { photosModule, useWaitingPhotos } from './use-waiting-photos';

/** Entries that nobody answered. They stay on this device, under their first key, until the server has them. */
export const UnsentNotice = (): ReactNode => {
  const { t } = useSpeech();
  const stranded = useUnsent().filter((entry) => entry.stranded);
  const [sending, setSending] = useState(false);
  const [turnedDown, setTurnedDown] = useState<readonly Trouble[]>([]);

  useWaitingPhotos();

  const send = async (): Promise<void> => {
    setSending(true);
    const told = await sendAgain();
    await (await photosModule()).sendPhotosAgain();
    setTurnedDown(
      told.flatMap(({ result }) =>
        result.ok || result.trouble.kind === 'unreachable' ? [] : [result.trouble],
      ),
    );
    setSending(false);
  };

  if (stranded.length === 0 && turnedDown.length === 0) return null;
  return (
    <div className="unsent stack tight no-print">
      {turnedDown.map((trouble, at) => (
        <TroubleNotice key={at} trouble={trouble} again={() => setTurnedDown([])} />
      ))}
      {stranded.length > 0 && (
        <div className="notice due" role="status">
          <Mark name="due" size={32} />
          <div className="grow row spread">
            <p>{t('unsent', { count: stranded.length })}</p>
            <button type="button" className="button primary" disabled={sending} onClick={() => void send()}>
              {t('send-again')}
            </button>
          </div>
        </div>
      )}
    </div>
  );
};
