import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { goTo, useAddress } from '../../router/router';
import { useSession } from '../../session/session';
import { TextField } from '../../ui/field';
import { SecretField } from '../../ui/secret-field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { showPasskey } from '../signing/passkey';
import { BindTablet } from './bind-tablet';
import { idOf } from './id-of';

const NOTHING = {};

type Way = { readonly entered: () => void; readonly stuck: (trouble: Trouble | null) => void };

const ByPassword = ({ entered, stuck }: Way): ReactNode => {
  const { t } = useSpeech();
  const [person, setPerson] = useState('');
  const [pin, setPin] = useState('');
  const [code, setCode] = useState<string | null>(null);
  const enter = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const id = await idOf(person);
    const result = await ask('signIn', {}, { body: { person: id, pin, ...(code ? { code } : {}) } });
    stuck(result.ok ? null : result.trouble);
    if (result.ok) entered();
    else if (result.trouble.kind === 'problem' && result.trouble.code === 'code-needed') setCode('');
  };
  return (
    <form className="stack" onSubmit={(event) => void enter(event)}>
      <h2>{t('other.password')}</h2>
      <TextField name={t('other.person')} value={person} change={setPerson} />
      <SecretField name={t('other.password')} value={pin} change={setPin} />
      {code !== null && <SecretField name={t('sign-in.code')} value={code} change={setCode} once />}
      <div>
        <button type="submit" className="button primary" disabled={person.trim() === '' || pin.length < 4}>
          {t('other.sign-in')}
        </button>
      </div>
    </form>
  );
};

const ByInvitation = ({ entered, stuck }: Way): ReactNode => {
  const { t } = useSpeech();
  const [code, setCode] = useState('');
  const [password, setPassword] = useState('');
  const take = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await ask('invitationTaken', {}, { body: { code, password } });
    stuck(result.ok ? null : result.trouble);
    if (result.ok) entered();
  };
  return (
    <form className="stack" onSubmit={(event) => void take(event)}>
      <h2>{t('other.invitation')}</h2>
      <TextField name={t('other.invitation-code')} value={code} change={setCode} mono />
      <SecretField
        name={t('own.password-new')}
        value={password}
        change={setPassword}
        hint={t('own.password-rule')}
        fresh
      />
      <div>
        <button type="submit" className="button" disabled={code.trim() === '' || password.length < 8}>
          {t('other.invitation-take')}
        </button>
      </div>
    </form>
  );
};

/** For whoever does not stand at a tablet of the plant with a PIN, and for making this one. */
export const OtherWays = ({ back }: { readonly back: () => void }): ReactNode => {
  const { t } = useSpeech();
  const { renew } = useSession();
  const address = useAddress();
  const provider = useQuestion('provider', NOTHING);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const entered = (): void => {
    void renew().then(() => {
      if (address.pathname === places.signIn) goTo(places.start);
    });
  };
  const byPasskey = async (): Promise<void> => {
    const shown = await showPasskey();
    const result = shown.ok ? await ask('passkeySignIn', {}, { body: { answer: shown.answer } }) : shown;
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) entered();
  };
  return (
    <main className="page sign-in stack" id="main">
      <div className="page-head row spread">
        <h1>{t('other.title')}</h1>
        <button type="button" className="button" onClick={back}>
          {t('other.back')}
        </button>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <ByPassword entered={entered} stuck={setTrouble} />
      <div>
        <button type="button" className="button" onClick={() => void byPasskey()}>
          {t('other.passkey')}
        </button>{' '}
        {provider.answer !== null && provider.answer.name !== null && (
          <a className="button" href="/api/provider/begin">
            {t('other.provider', { name: provider.answer.name })}
          </a>
        )}
      </div>
      <ByInvitation entered={entered} stuck={setTrouble} />
      <BindTablet stuck={setTrouble} />
    </main>
  );
};
