import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useSession } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

/** The server looks closer: at length, and at what everybody tries first. */
const SHORTEST = 8;

/** The first administrator: by the code that stands where the server was started. */
export const SetupScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { renew } = useSession();
  const [code, setCode] = useState('');
  const [name, setName] = useState('');
  const [pin, setPin] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const send = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await ask('setUp', {}, { body: { code: code.trim(), name: name.trim(), password: pin } });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) await renew();
  };
  const ready = code.trim() !== '' && name.trim() !== '' && pin.length >= SHORTEST;
  return (
    <main className="page sign-in" id="main">
      <div className="page-head">
        <div>
          <h1>{t('setup.title')}</h1>
          <p>{t('setup.says')}</p>
        </div>
      </div>
      <form className="stack" onSubmit={(event) => void send(event)}>
        <label className="field">
          <span className="field-name">{t('setup.code')}</span>
          <input
            className="input mono"
            value={code}
            autoComplete="off"
            spellCheck={false}
            autoFocus
            onChange={(event) => setCode(event.target.value)}
          />
        </label>
        <label className="field">
          <span className="field-name">{t('setup.name')}</span>
          <input
            className="input"
            value={name}
            maxLength={80}
            autoComplete="name"
            onChange={(event) => setName(event.target.value)}
          />
        </label>
        <label className="field">
          <span className="field-name">{t('setup.pin')}</span>
          <input
            className="input"
            type="password"
            value={pin}
            maxLength={128}
            autoComplete="new-password"
            onChange={(event) => setPin(event.target.value)}
          />
          <span className="quiet small">{t('setup.pin-says')}</span>
        </label>
        {trouble !== null && <TroubleNotice trouble={trouble} />}
        <div>
          <button type="submit" className="button primary big" disabled={!ready}>
            {t('setup.done')}
          </button>
        </div>
      </form>
    </main>
  );
};
