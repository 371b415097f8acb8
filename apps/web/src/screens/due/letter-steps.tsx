import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import { today } from '../claims/days';
import { TextArea } from '../claims/text-area';
import { ToldForm } from '../claims/told-form';
import type { StepProps } from './file';

type Step = 'notification' | 'remedyPlan' | 'completion';
const SAYS = {
  notification: 'due.notification-says',
  remedyPlan: 'due.plan-says',
  completion: 'due.completion-says',
} as const;

/** What went out: on which day, under which reference. */
export const ReferenceStep = ({ file, done, step }: StepProps & { readonly step: Step }): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [on, setOn] = useState(today);
  const [reference, setReference] = useState('');
  const send = (): void => {
    const wanted = { determination: file.determination };
    const of = { reference: reference.trim() };
    if (step === 'notification') void telling.send(step, { ...of, notifiedOn: on }, wanted);
    else if (step === 'remedyPlan') void telling.send(step, { ...of, submittedOn: on }, wanted);
    else void telling.send(step, { ...of, reportedOn: on }, wanted);
  };
  return (
    <ToldForm
      telling={telling}
      ready={reference.trim() !== '' && on !== ''}
      says={t('claims.record')}
      send={send}
    >
      <p>{t(SAYS[step])}</p>
      <TextField name={t('due.on')} type="date" value={on} change={setOn} />
      <TextField name={t('due.reference')} value={reference} change={setReference} />
    </ToldForm>
  );
};

/** Written concurrence on the methods, or a written statement why not (3282.404(b)(4)). */
export const AgencyStep = ({ file, done }: StepProps): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [concurs, setConcurs] = useState(true);
  const [takenOn, setTakenOn] = useState(today);
  const [reference, setReference] = useState('');
  const [note, setNote] = useState('');
  const body = {
    concurs,
    takenOn,
    reference: reference.trim(),
    ...(note.trim() === '' ? {} : { note: note.trim() }),
  };
  return (
    <ToldForm
      telling={telling}
      ready={reference.trim() !== '' && takenOn !== ''}
      says={t('claims.record')}
      send={() => void telling.send('agencyPosition', body, { determination: file.determination })}
    >
      <div className="choices">
        <button type="button" className="button" aria-pressed={concurs} onClick={() => setConcurs(true)}>
          {t('due.concurs')}
        </button>
        <button type="button" className="button" aria-pressed={!concurs} onClick={() => setConcurs(false)}>
          {t('due.disagrees')}
        </button>
      </div>
      <TextField name={t('due.on')} type="date" value={takenOn} change={setTakenOn} />
      <TextField name={t('due.reference')} value={reference} change={setReference} />
      <TextArea name={t('due.statement')} value={note} change={setNote} />
    </ToldForm>
  );
};

/** With the days the approver set; without them the most the regulation allows. */
export const ApprovalStep = ({ file, done }: StepProps): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [approvedOn, setApprovedOn] = useState(today);
  const [noticesBy, setNoticesBy] = useState('');
  const [correctBy, setCorrectBy] = useState('');
  const [reference, setReference] = useState('');
  const body = {
    approvedOn,
    noticesBy: noticesBy === '' ? null : noticesBy,
    correctBy: correctBy === '' ? null : correctBy,
    reference: reference.trim(),
  };
  return (
    <ToldForm
      telling={telling}
      ready={reference.trim() !== '' && approvedOn !== ''}
      says={t('claims.record')}
      send={() => void telling.send('planApproval', body, { determination: file.determination })}
    >
      <div className="claim-fields">
        <TextField name={t('due.approved-on')} type="date" value={approvedOn} change={setApprovedOn} />
        <TextField name={t('due.notices-by')} type="date" value={noticesBy} change={setNoticesBy} />
        <TextField name={t('due.correct-by')} type="date" value={correctBy} change={setCorrectBy} />
        <TextField name={t('due.reference')} value={reference} change={setReference} />
      </div>
    </ToldForm>
  );
};
