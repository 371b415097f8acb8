import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { newKey } from '../../api/key';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

/** By the id, since whoever asks to be erased has mostly left already and stands in no list. */
export const ErasePerson = ({ changed }: { readonly changed: () => void }): ReactNode => {
  const { t } = useSpeech();
  const [person, setPerson] = useState('');
  const [sure, setSure] = useState(false);
  const [erased, setErased] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const erase = async (): Promise<void> => {
    const result = await ask('erasure', { person: person.trim() }, { body: {}, key: newKey() });
    setTrouble(result.ok ? null : result.trouble);
    setErased(result.ok ? person.trim() : null);
    setSure(false);
    if (result.ok) changed();
  };
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    if (sure) void erase();
    else setSure(person.trim() !== '');
  };
  return (
    <details>
      <summary className="others">{t('people.erase')}</summary>
      <form className="stack" onSubmit={submit}>
        <p>{t('people.erase-says')}</p>
        <label className="field people-search">
          <span className="field-name">{t('people.erase-id')}</span>
          <input
            className="input mono"
            value={person}
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => {
              setPerson(event.target.value);
              setSure(false);
            }}
          />
        </label>
        <div className="row">
          <button type="submit" className={sure ? 'button primary' : 'button'}>
            {sure ? t('people.erase-sure', { person: person.trim() }) : t('people.erase')}
          </button>
        </div>
        {trouble !== null && <TroubleNotice trouble={trouble} />}
        {erased !== null && <p role="status">{t('people.erased', { person: erased })}</p>}
      </form>
    </details>
  );
};
