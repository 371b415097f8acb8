import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { ChoiceField, TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import { today } from '../claims/days';
import { TextArea } from '../claims/text-area';
import { ToldForm } from '../claims/told-form';
import type { StepProps } from './file';

const HOWS = ['notified', 'corrected', 'refused'] as const;
const WORDS = { notified: 'due.notified', corrected: 'due.corrected', refused: 'due.refused' } as const;
const SAYS = {
  notified: 'due.notified-says',
  corrected: 'due.corrected-says',
  refused: 'due.refused-says',
} as const;

/** One home of the class: told, mended, or its owner would not have it (3282.417). */
export const RemedyStep = ({ file, done }: StepProps): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [how, setHow] = useState<(typeof HOWS)[number]>('notified');
  const [home, setHome] = useState('');
  const [doneOn, setDoneOn] = useState(today);
  const [note, setNote] = useState('');
  const inClass = file.classHomes ?? [];
  const homes = inClass.length > 0 ? inClass : file.exposure.map((one) => one.home);
  const body = { home, how, doneOn, ...(note.trim() === '' ? {} : { note: note.trim() }) };
  return (
    <ToldForm
      telling={telling}
      ready={home !== '' && doneOn !== ''}
      says={t('claims.record')}
      send={() => void telling.send('remedy', body, { determination: file.determination })}
    >
      <ChoiceField
        name={t('complaint.home')}
        value={home}
        none={t('complaint.choose')}
        from={homes.map((id) => ({ id, says: id }))}
        change={setHome}
      />
      <div className="choices">
        {HOWS.map((one) => (
          <button
            key={one}
            type="button"
            className="button"
            aria-pressed={how === one}
            onClick={() => setHow(one)}
          >
            {t(WORDS[one])}
          </button>
        ))}
      </div>
      <p>{t(SAYS[how])}</p>
      <TextField name={t('due.on')} type="date" value={doneOn} change={setDoneOn} />
      <TextArea name={t('due.note')} value={note} change={setNote} />
    </ToldForm>
  );
};
