import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { newKey } from '../../api/key';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { dropDraft } from './draft';
import type { Files } from './draft';

/** For a second person to approve. */
export const HandIn = ({
  files,
  base,
}: {
  readonly files: Files;
  readonly base: number | null;
}): ReactNode => {
  const { t } = useSpeech();
  const [note, setNote] = useState('');
  const [agency, setAgency] = useState({ reference: '', approvedOn: '' });
  const [from, setFrom] = useState('');
  const [key] = useState(newKey);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [done, setDone] = useState(false);
  const handIn = async (): Promise<void> => {
    const body = {
      files,
      base,
      ...(note.trim() === '' ? {} : { note: note.trim() }),
      ...(agency.reference.trim() === '' ? {} : { agency }),
      ...(from === '' ? {} : { effectiveFrom: new Date(`${from}T00:00:00`).toISOString() }),
    };
    const result = await ask('proposal', {}, { body, key });
    setTrouble(result.ok ? null : result.trouble);
    setDone(result.ok);
    if (result.ok) dropDraft();
  };
  if (done)
    return (
      <p className="notice proven" role="status">
        {t('book.handed-in')}
      </p>
    );
  return (
    <section className="stack tight">
      <TextField name={t('book.note')} value={note} change={setNote} />
      <div className="book-find">
        <TextField
          name={t('book.agency-reference')}
          value={agency.reference}
          change={(reference) => setAgency({ ...agency, reference })}
        />
        <TextField
          name={t('book.agency-date')}
          type="date"
          value={agency.approvedOn}
          change={(approvedOn) => setAgency({ ...agency, approvedOn })}
        />
        <TextField name={t('book.from')} type="date" value={from} change={setFrom} />
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <div>
        <button type="button" className="button primary" onClick={() => void handIn()}>
          {t('book.hand-in')}
        </button>
      </div>
    </section>
  );
};
