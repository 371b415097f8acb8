import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { newKey } from '../../api/key';
import { useQuestion } from '../../api/use-question';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { ExaminationView } from './examination-view';

const EVERYTHING = {};
type Proposal = AnswerOf<'proposals'>['proposals'][number];
type Deciding = { readonly decided: (says: string) => void };

/** What waits for a second person: what it changes, what it would mean, and their decision. */
export const ApprovePart = ({ manages }: { readonly manages: boolean }): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('proposals', EVERYTHING);
  const [said, setSaid] = useState('');
  const decided = (says: string): void => {
    setSaid(says);
    again();
  };
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (answer === null) return null;
  return (
    <>
      <h1>{t('book.waits', { count: answer.proposals.length })}</h1>
      {said !== '' && (
        <p className="notice proven" role="status">
          {said}
        </p>
      )}
      {answer.proposals.map((proposal) => (
        <ProposalView key={proposal.proposal} of={proposal} manages={manages} decided={decided} />
      ))}
    </>
  );
};

const ProposalView = ({
  of,
  manages,
  decided,
}: Deciding & { readonly of: Proposal; readonly manages: boolean }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const { answer } = useQuestion('proposalExamination', { proposal: of.proposal });
  return (
    <section className="stack book-proposal">
      <h2>{t('book.drafted', { name: of.draftedBy, at: times.moment(of.proposedAt) })}</h2>
      {of.note !== null && <p>{of.note}</p>}
      {of.outdated && <p className="notice hold">{t('book.outdated')}</p>}
      {of.agency !== null && (
        <p>{t('book.agency', { reference: of.agency.reference, day: of.agency.approvedOn })}</p>
      )}
      {answer !== null && <ExaminationView is={answer} />}
      {manages && <Decision of={of} decided={decided} />}
    </section>
  );
};

const Decision = ({ of, decided }: Deciding & { readonly of: Proposal }): ReactNode => {
  const { t } = useSpeech();
  const [reference, setReference] = useState('');
  const [approvedOn, setApprovedOn] = useState('');
  const [key] = useState(newKey);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const at = { proposal: of.proposal };
  const approve = async (): Promise<void> => {
    const body = reference.trim() === '' ? {} : { agency: { reference, approvedOn } };
    const result = await ask('approval', at, { body, key });
    if (result.ok) decided(t('book.done-issued', { revision: result.answer.revision }));
    else setTrouble(result.trouble);
  };
  const sendBack = async (): Promise<void> => {
    const result = await ask('proposalReturn', at, { body: {}, key: newKey() });
    if (result.ok) decided('');
    else setTrouble(result.trouble);
  };
  return (
    <div className="stack tight">
      {of.own && <p className="notice due">{t('book.own')}</p>}
      {!of.own && of.agency === null && (
        <div className="book-find">
          <TextField name={t('book.agency-reference')} value={reference} change={setReference} />
          <TextField name={t('book.agency-date')} type="date" value={approvedOn} change={setApprovedOn} />
        </div>
      )}
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <div className="row">
        {!of.own && (
          <button type="button" className="button primary" onClick={() => void approve()}>
            {t('book.do-approve')}
          </button>
        )}
        <button type="button" className="button" onClick={() => void sendBack()}>
          {t(of.own ? 'book.take-back' : 'book.send-back')}
        </button>
      </div>
    </div>
  );
};
