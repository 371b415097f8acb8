import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

const NOTHING = {};

/** Which account at the plant's identity provider is theirs; nothing where the plant has none. */
export const ProviderLink = ({ person }: { readonly person: string }): ReactNode => {
  const { t } = useSpeech();
  const { answer } = useQuestion('provider', NOTHING);
  const [subject, setSubject] = useState('');
  const [linked, setLinked] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  if (answer === null || answer.name === null) return null;

  const link = async (): Promise<void> => {
    const result = await ask('providerLink', { person }, { body: { subject: subject.trim() } });
    setTrouble(result.ok ? null : result.trouble);
    setLinked(result.ok);
  };
  return (
    <div className="row token-form">
      <div className="grow">
        <TextField
          name={t('people.provider', { name: answer.name })}
          value={subject}
          change={setSubject}
          hint={t('people.provider-says')}
        />
      </div>
      <button type="button" className="button" disabled={subject.trim() === ''} onClick={() => void link()}>
        {t('people.provider-link')}
      </button>
      {linked && <p role="status">{t('people.provider-linked')}</p>}
      {trouble !== null && <TroubleNotice trouble={trouble} />}
    </div>
  );
};
