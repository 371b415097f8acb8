import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

type Taken = AnswerOf<'claimsFile'>;

/** A file of complaints from somewhere else: what cannot be taken is named by its line, and nothing is taken twice. */
export const ClaimsFile = ({ again }: { readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const [busy, setBusy] = useState(false);
  const [taken, setTaken] = useState<Taken | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const take = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    setBusy(true);
    const result = await ask('claimsFile', {}, { body: { csv: await file.text() } });
    setBusy(false);
    setTaken(result.ok ? result.answer : null);
    setTrouble(result.ok ? null : result.trouble);
    again();
  };
  return (
    <details className="no-print">
      <summary className="claim-more">{t('claims.file')}</summary>
      <div className="stack tight">
        <p>{t('claims.file-says')}</p>
        <p className="mono small claim-columns">
          received,source,claim,home,section,component,symptom,place,noticed,words,no_failure,retailer,hauler,
          installer,set,occupied,address
        </p>
        <label className="field">
          <span className="field-name">{t('claims.file-choose')}</span>
          <input
            className="input"
            type="file"
            accept=".csv,text/csv"
            disabled={busy}
            onChange={(event) => void take(event.target.files?.[0])}
          />
        </label>
        {trouble !== null && <TroubleNotice trouble={trouble} />}
        {taken !== null && (
          <div role="status" className={taken.refused.length === 0 ? 'notice proven' : 'notice due'}>
            <div className="grow stack tight">
              <p>{t('claims.file-taken', { taken: taken.taken, refused: taken.refused.length })}</p>
              <ul>
                {taken.refused.map(({ line, reason }) => (
                  <li key={`${String(line)} ${reason}`}>
                    {t('claims.file-line', { line })} <span lang="en">{reason}</span>
                  </li>
                ))}
              </ul>
            </div>
          </div>
        )}
      </div>
    </details>
  );
};
