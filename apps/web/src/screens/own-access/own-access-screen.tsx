import { useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { SecretField } from '../../ui/secret-field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { Sessions } from '../people/sessions';
import '../people/people.css';
import './own-access.css';
import { Codes } from './codes';
import { Passkeys } from './passkeys';
import { Password } from './password';
import type { Proving } from './proving';

const NOTHING = {};

/** What one signs in with, and where one is signed in now. */
export const OwnAccessScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('ownAccess', NOTHING);
  const [secret, setSecret] = useState('');
  const [code, setCode] = useState('');
  const proving: Proving = { secret, code: code === '' ? undefined : code };
  const changed = (): void => {
    // A code works once; the next change asks for the next one.
    setCode('');
    again();
  };
  return (
    <main className="page stack own-access" id="main">
      <div className="page-head">
        <div>
          <h1>{t('own.title')}</h1>
          <p>{t('own.says')}</p>
        </div>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && (
        <>
          <div className="own-proving">
            <SecretField name={t('own.now')} value={secret} change={setSecret} />
            {answer.codes && <SecretField name={t('own.code')} value={code} change={setCode} once />}
          </div>
          <Password own={answer} proving={proving} changed={changed} />
          <Codes own={answer} proving={proving} changed={changed} />
          <Passkeys own={answer} proving={proving} changed={changed} />
        </>
      )}
      <Sessions />
    </main>
  );
};
