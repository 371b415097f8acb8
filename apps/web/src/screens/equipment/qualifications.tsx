import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { Standing } from './standing';

type Row = AnswerOf<'equipment'>['qualifications'][number];
type Props = { readonly rows: readonly Row[]; readonly manages: boolean; readonly again: () => void };

/** Who may sign for more than their own crew and role, and until when; renewed or ended by who manages quality. */
export const Qualifications = ({ rows, manages, again }: Props): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <section className="stack">
      <h2>{t('equipment.qualifications')}</h2>
      {rows.length === 0 && <p className="quiet">{t('equipment.nobody')}</p>}
      <ul className="rows">
        {rows.map((row) => (
          <li key={`${row.person} ${row.token}`}>
            <p className="grow">
              <strong>{row.name}</strong> · {say(row.says)}
            </p>
            <p className="mono">{row.until ?? t('equipment.for-good')}</p>
            <Standing is={row.standing} of="qualification" />
            {manages && <Changes row={row} again={again} />}
          </li>
        ))}
      </ul>
    </section>
  );
};

const Changes = ({ row, again }: { readonly row: Row; readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const [renews, setRenews] = useState(false);
  const [until, setUntil] = useState(row.until ?? '');
  const telling = useTell(() => {
    setRenews(false);
    again();
  });
  const { person, token } = row;
  return (
    <>
      <div className="row no-print">
        <button type="button" className="button" aria-expanded={renews} onClick={() => setRenews(!renews)}>
          {t('equipment.renew')}
        </button>
        <button
          type="button"
          className="button"
          disabled={telling.busy}
          onClick={() => void telling.send('qualificationEnd', { person, token })}
        >
          {t('equipment.end')}
        </button>
      </div>
      {renews && (
        <form
          className="office-form grow no-print"
          onSubmit={(event) => {
            event.preventDefault();
            void telling.send('qualification', { person, token, until: until === '' ? null : until });
          }}
        >
          <TextField name={t('equipment.until')} value={until} change={setUntil} type="date" />
          <div>
            <button type="submit" className="button primary" disabled={telling.busy}>
              {t('equipment.record')}
            </button>
          </div>
        </form>
      )}
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </>
  );
};
