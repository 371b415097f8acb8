import type { ReactNode } from 'react';
import { useState } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { ChoiceField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { dropDraft, keepDraft, keptDraft } from './draft';
import type { Files } from './draft';
import { ExaminationView } from './examination-view';
import type { Examination } from './examination-view';
import { HandIn } from './hand-in';

const LATEST = {};

/** The files as they are, to be changed; nothing of it is in force before somebody else approves it. */
export const ChangePart = (): ReactNode => {
  const { answer, trouble, again } = useQuestion('rulebookFiles', LATEST);
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  return answer === null ? null : <Draft issued={answer.files} />;
};

const Draft = ({ issued }: { readonly issued: Files }): ReactNode => {
  const { t } = useSpeech();
  const [files, setFiles] = useState<Files>(() => keptDraft() ?? issued);
  const [name, setName] = useState('values.csv');
  const [looked, setLooked] = useState<Examination | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const change = (next: Files): void => {
    setFiles(next);
    keepDraft(next);
    setLooked(null);
  };
  const look = async (): Promise<void> => {
    const result = await ask('examination', {}, { body: { files } });
    setLooked(result.ok ? result.answer : null);
    setTrouble(result.ok ? null : result.trouble);
  };
  const upload = async (list: FileList | null): Promise<void> => {
    const given = await Promise.all(
      [...(list ?? [])].map(async (file) => [file.name, await file.text()] as const),
    );
    change({ ...files, ...Object.fromEntries(given) });
  };
  const drop = (): void => {
    dropDraft();
    setFiles(issued);
    setLooked(null);
  };
  return (
    <>
      <h1>{t('book.change')}</h1>
      <div className="book-find">
        <ChoiceField
          name={t('book.file')}
          value={name}
          from={Object.keys(files).map((id) => ({ id, says: id }))}
          change={setName}
        />
        <label className="field">
          <span>{t('book.upload')}</span>
          <input
            className="input"
            type="file"
            accept=".csv,.yaml"
            multiple
            onChange={(event) => void upload(event.target.files)}
          />
        </label>
      </div>
      <label className="field">
        <span>{t('book.text')}</span>
        <textarea
          className="input mono book-text"
          value={files[name] ?? ''}
          spellCheck={false}
          onChange={(event) => change({ ...files, [name]: event.target.value })}
        />
      </label>
      <p className="quiet small">{t('book.draft-kept')}</p>
      <div className="row">
        <button type="button" className="button primary" onClick={() => void look()}>
          {t('book.look')}
        </button>
        <button type="button" className="button" onClick={drop}>
          {t('book.draft-drop')}
        </button>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      {looked !== null && <ExaminationView is={looked} />}
      {looked?.problems.length === 0 && looked.changes.length > 0 && (
        <HandIn files={files} base={looked.base} />
      )}
    </>
  );
};
