import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import type { OpenDefect } from './open-defect';

const DISPOSITIONS = ['rework', 'repair', 'use-as-is', 'scrap'] as const;
type Disposition = (typeof DISPOSITIONS)[number];
const WORDS = {
  rework: 'disposition.rework',
  repair: 'disposition.repair',
  'use-as-is': 'disposition.use-as-is',
  scrap: 'disposition.scrap',
} as const;
const SAYS = {
  rework: 'disposition.rework-says',
  repair: 'disposition.repair-says',
  'use-as-is': 'disposition.use-as-is-says',
  scrap: 'disposition.scrap-says',
} as const;

type Props = { readonly defect: OpenDefect; readonly done: () => void };

export const DispositionForm = ({ defect, done }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [disposition, setDisposition] = useState<Disposition>('rework');
  const [detail, setDetail] = useState('');
  const [approval, setApproval] = useState('');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    const body = {
      serial: defect.serial,
      disposition,
      detail: disposition === 'repair' ? detail.trim() : null,
      ...(disposition === 'use-as-is' ? { approval: approval.trim() } : {}),
    };
    void telling.send('disposition', body, { defect: defect.defect });
  };
  const ready =
    (disposition !== 'repair' || detail.trim() !== '') &&
    (disposition !== 'use-as-is' || approval.trim() !== '');
  return (
    <form className="office-form grow" onSubmit={submit}>
      <div className="choices" role="group" aria-label={t('defects.decide')}>
        {DISPOSITIONS.map((one) => (
          <button
            key={one}
            type="button"
            className="button"
            aria-pressed={disposition === one}
            onClick={() => setDisposition(one)}
          >
            {t(WORDS[one])}
          </button>
        ))}
      </div>
      <p className="quiet">{t(SAYS[disposition])}</p>
      {disposition === 'repair' && (
        <TextField name={t('disposition.detail')} value={detail} change={setDetail} />
      )}
      {disposition === 'use-as-is' && (
        <TextField name={t('disposition.approval')} value={approval} change={setApproval} />
      )}
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <div>
        <button type="submit" className="button primary" disabled={telling.busy || !ready}>
          {t('defects.record-decision')}
        </button>
      </div>
    </form>
  );
};

/** Causes the fault map knows come first; any operation of the plan may be the one. */
export const CauseForm = ({ defect, done }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(done);
  const [operation, setOperation] = useState(defect.operation ?? '');
  const [note, setNote] = useState('');
  const known = new Set(
    plant.faults
      .filter((fault) => fault.component === defect.component && fault.symptom === defect.symptom)
      .flatMap((fault) => fault.operations),
  );
  const operations = [...plant.operations].sort(
    (one, other) => Number(known.has(other.id)) - Number(known.has(one.id)),
  );
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    const body = {
      serial: defect.serial,
      operation: operation === '' ? null : operation,
      note: note.trim(),
    };
    void telling.send('cause', body, { defect: defect.defect });
  };
  return (
    <form className="office-form grow" onSubmit={submit}>
      <ChoiceField
        name={t('defects.cause-name')}
        value={operation}
        change={setOperation}
        none={t('defects.no-cause')}
        from={operations.map(({ id, name }) => ({ id, says: say(name) }))}
      />
      <TextField name={t('defects.why')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <div>
        <button type="submit" className="button primary" disabled={telling.busy || note.trim() === ''}>
          {t('defects.record-cause')}
        </button>
      </div>
    </form>
  );
};
