import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { makePasskey } from '../signing/passkey';
import { isShown } from './proving';
import type { Part } from './proving';

export const Passkeys = ({ own, proving, changed }: Part): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const [name, setName] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [failed, setFailed] = useState(false);

  const add = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const made = await makePasskey(proving);
    const result = made.ok ? await ask('passkey', {}, { body: { name, answer: made.answer } }) : made;
    setTrouble(result.ok ? null : result.trouble);
    setFailed(!result.ok && result.trouble === null);
    if (!result.ok) return;
    setName('');
    changed();
  };
  const end = async (passkey: string): Promise<void> => {
    const result = await ask('passkeyEnd', { passkey }, { body: {} });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) changed();
  };
  return (
    <section className="stack" aria-labelledby="passkeys">
      <h2 id="passkeys">{t('own.passkeys')}</h2>
      {own.passkeys.length === 0 && (
        <p>{t(own.passkeysHere ? 'own.passkeys-none' : 'own.passkeys-not-here')}</p>
      )}
      <ul className="access-list">
        {own.passkeys.map((passkey) => (
          <li key={passkey.id} className="row spread">
            <span>
              <strong>{passkey.name}</strong>{' '}
              <span className="quiet">
                {passkey.usedAt === null
                  ? t('own.passkey-new')
                  : t('own.passkey-used', { at: times.moment(passkey.usedAt) })}
              </span>
            </span>
            <button type="button" className="button" onClick={() => void end(passkey.id)}>
              {t('own.passkey-end')}
            </button>
          </li>
        ))}
      </ul>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      {failed && <p role="alert">{t('own.passkey-failed')}</p>}
      {own.passkeysHere && (
        <form className="row token-form" onSubmit={(event) => void add(event)}>
          <div className="grow">
            <TextField name={t('own.passkey-name')} value={name} change={setName} />
          </div>
          <button type="submit" className="button" disabled={!isShown(proving) || name.trim() === ''}>
            {t('own.passkey-add')}
          </button>
        </form>
      )}
    </section>
  );
};
