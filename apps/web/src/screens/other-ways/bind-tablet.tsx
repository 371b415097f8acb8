import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';

const NOTHING = {};

/** By the code an administrator reads out; the browser keeps what binds it where no script can see it. */
export const BindTablet = ({ stuck }: { readonly stuck: (trouble: Trouble | null) => void }): ReactNode => {
  const { t } = useSpeech();
  const { answer, again } = useQuestion('binding', NOTHING);
  const [code, setCode] = useState('');
  const bind = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await ask('bind', {}, { body: { code } });
    stuck(result.ok ? null : result.trouble);
    if (!result.ok) return;
    setCode('');
    again();
  };
  return (
    <form className="stack" onSubmit={(event) => void bind(event)}>
      <h2>{t('other.tablet')}</h2>
      {answer?.tablet != null && <p role="status">{t('other.tablet-bound', { name: answer.tablet.name })}</p>}
      <p>{t('other.tablet-says')}</p>
      <TextField name={t('other.invitation-code')} value={code} change={setCode} mono />
      <div>
        <button type="submit" className="button" disabled={code.trim() === ''}>
          {t('other.tablet-bind')}
        </button>
      </div>
    </form>
  );
};
