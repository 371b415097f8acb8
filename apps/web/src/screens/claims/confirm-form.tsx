import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { useSpeech } from '../../words/words';
import type { Candidate, Claim } from './claim';
import { TextArea } from './text-area';
import { ToldForm } from './told-form';

type Props = { readonly candidate: Candidate; readonly claim: Claim; readonly done: () => void };

/** Said to be the cause: on the line it counts as an escape of its station, once. */
export const ConfirmForm = ({ candidate, claim, done }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const telling = useTell(done);
  const [note, setNote] = useState('');
  const body = { cause: candidate.key, ...(note.trim() === '' ? {} : { note: note.trim() }) };
  return (
    <ToldForm
      telling={telling}
      ready
      says={t('trace.confirm-it', { cause: say(candidate.says) })}
      send={() => void telling.send('causeConfirmation', body, { claim: claim.claim })}
    >
      <p>{t(candidate.cause.operation === null ? 'trace.confirm-outside' : 'trace.confirm-says')}</p>
      <TextArea name={t('trace.confirm-note')} value={note} change={setNote} />
    </ToldForm>
  );
};
