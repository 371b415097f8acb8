import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { useSpeech } from '../../words/words';
import type { Claim } from './claim';
import { NO_FAILURE, failureOf, isSaid } from './complaint';
import { FailureFields } from './failure-fields';
import { HomeField } from './home-field';
import { TextArea } from './text-area';
import { ToldForm } from './told-form';

type Props = { readonly claim: Claim; readonly done: () => void };

export const DismissForm = ({ claim, done }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [because, setBecause] = useState('');
  return (
    <ToldForm
      telling={telling}
      ready={because.trim() !== ''}
      says={t('claims.record')}
      send={() => void telling.send('dismissal', { because: because.trim() }, { claim: claim.claim })}
    >
      <TextArea name={t('complaint.because')} value={because} change={setBecause} />
    </ToldForm>
  );
};

export const OpenForm = ({ claim, done }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [home, setHome] = useState(claim.home ?? '');
  const [failure, setFailure] = useState(NO_FAILURE);
  const body = { home, ...failureOf(failure) };
  return (
    <ToldForm
      telling={telling}
      ready={home !== '' && isSaid(failure)}
      says={t('claims.record')}
      send={() => void telling.send('claimOpening', body, { claim: claim.claim })}
    >
      {claim.home === null && <HomeField home={home} change={setHome} />}
      <FailureFields
        failure={failure}
        home={home}
        change={(part) => setFailure((before) => ({ ...before, ...part }))}
      />
    </ToldForm>
  );
};
