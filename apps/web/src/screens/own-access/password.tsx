import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { SecretField } from '../../ui/secret-field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { isShown } from './proving';
import type { Part } from './proving';

/** The contract's least length; the server looks closer. */
const SHORTEST = 8;

export const Password = ({ own, proving, changed }: Part): ReactNode => {
  const { t } = useSpeech();
  const [password, setPassword] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [done, setDone] = useState(false);
  const choose = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await ask('ownPassword', {}, { body: { ...proving, password } });
    setTrouble(result.ok ? null : result.trouble);
    setDone(result.ok);
    if (!result.ok) return;
    setPassword('');
    changed();
  };
  return (
    <form className="stack" onSubmit={(event) => void choose(event)}>
      <h2>{t('own.password')}</h2>
      <p>{t(own.password ? 'own.password-there' : 'own.password-none')}</p>
      <SecretField
        name={t('own.password-new')}
        value={password}
        change={setPassword}
        hint={t('own.password-rule')}
        fresh
      />
      {done && <p role="status">{t('own.password-done')}</p>}
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <div>
        <button type="submit" className="button" disabled={!isShown(proving) || password.length < SHORTEST}>
          {t('own.password-set')}
        </button>
      </div>
    </form>
  );
};
