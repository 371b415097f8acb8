import { useEffect, useRef, useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { SecretField } from '../../ui/secret-field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { showPasskey } from './passkey';
import './signing.css';

const NOTHING = {};

type Props = {
  /** The idempotency key of what is signed. */
  readonly sentAs: string;
  readonly done: (signed: boolean) => void;
};

/** Whoever is signed in shows once more who they are, for this one thing. */
export const SigningForm = ({ sentAs, done }: Props): ReactNode => {
  const { t } = useSpeech();
  const dialog = useRef<HTMLDialogElement>(null);
  const { answer: own } = useQuestion('ownAccess', NOTHING);
  const [secret, setSecret] = useState('');
  const [code, setCode] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  useEffect(() => dialog.current?.showModal(), []);

  const sign = async (shown: object): Promise<void> => {
    const result = await ask('signature', {}, { body: { key: sentAs, ...shown } });
    if (result.ok) done(true);
    else setTrouble(result.trouble);
  };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void sign({ secret, ...(code === '' ? {} : { code }) });
  };
  const byPasskey = async (): Promise<void> => {
    const shown = await showPasskey();
    if (shown.ok) await sign({ answer: shown.answer });
    else setTrouble(shown.trouble);
  };
  return (
    <dialog ref={dialog} className="signing" aria-labelledby="signing" onCancel={() => done(false)}>
      <form className="stack" onSubmit={submit}>
        <h2 id="signing">{t('signing.title')}</h2>
        <p>{t('signing.says')}</p>
        <SecretField name={t('signing.secret')} value={secret} change={setSecret} />
        {own?.codes === true && <SecretField name={t('signing.code')} value={code} change={setCode} once />}
        {trouble !== null && <TroubleNotice trouble={trouble} />}
        <div className="row">
          <button type="submit" className="button primary" disabled={secret.length < 4}>
            {t('signing.sign')}
          </button>
          {(own?.passkeys.length ?? 0) > 0 && (
            <button type="button" className="button" onClick={() => void byPasskey()}>
              {t('signing.passkey')}
            </button>
          )}
          <button type="button" className="button" onClick={() => done(false)}>
            {t('signing.not')}
          </button>
        </div>
      </form>
    </dialog>
  );
};
