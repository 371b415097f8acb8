import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import type { Claim } from './claim';
import { today } from './days';
import { TextArea } from './text-area';
import { ToldForm } from './told-form';

const SEVERITIES = ['no-action', 'noncompliance'] as const;
const WORDS = { 'no-action': 'due.no-action', noncompliance: 'claims.this-home-only' } as const;

/** For most claims: nothing to do, or a noncompliance of this home alone. Anything graver has a file of its own. */
export const DecideForm = ({
  claim,
  done,
}: {
  readonly claim: Claim;
  readonly done: () => void;
}): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [severity, setSeverity] = useState<(typeof SEVERITIES)[number]>('no-action');
  const [decidedOn, setDecidedOn] = useState(today);
  const [bases, setBases] = useState('');
  const body = { severity, decidedOn, bases: bases.trim() };
  return (
    <ToldForm
      telling={telling}
      ready={bases.trim() !== '' && decidedOn !== ''}
      says={t('claims.record')}
      send={() => void telling.send('claimDecision', body, { claim: claim.claim })}
    >
      <p>{t('claims.decide-says')}</p>
      <div className="choices" role="group" aria-label={t('claims.decide')}>
        {SEVERITIES.map((one) => (
          <button
            key={one}
            type="button"
            className="button"
            aria-pressed={severity === one}
            onClick={() => setSeverity(one)}
          >
            {t(WORDS[one])}
          </button>
        ))}
      </div>
      <TextField name={t('due.decided-on')} type="date" value={decidedOn} change={setDecidedOn} />
      <TextArea name={t('due.bases')} value={bases} change={setBases} />
      <p className="quiet small">{t('due.counsel')}</p>
    </ToldForm>
  );
};
