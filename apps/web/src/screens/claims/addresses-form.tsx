import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { save } from '../../charts/save';
import { useSpeech } from '../../words/words';
import type { ExposureMethod } from './claim';
import { TextArea } from './text-area';
import { ToldForm } from './told-form';

type Props = { readonly claim: string; readonly cause: string; readonly method: ExposureMethod };

/** Where people live leaves the plant only with a reason, which goes into the ledger of accesses. */
export const AddressesForm = ({ claim, cause, method }: Props): ReactNode => {
  const { t } = useSpeech();
  const [reason, setReason] = useState('');
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const take = async (): Promise<void> => {
    setBusy(true);
    const result = await ask('exposureFile', {}, { body: { claim, cause, method, reason: reason.trim() } });
    setBusy(false);
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) save(`${claim}-addresses.csv`, new Blob([result.answer.csv], { type: 'text/csv' }));
  };
  return (
    <details>
      <summary className="claim-more">{t('expose.addresses')}</summary>
      <ToldForm
        telling={{ busy, trouble }}
        ready={reason.trim() !== ''}
        says={t('expose.take')}
        send={() => void take()}
      >
        <TextArea name={t('expose.why')} value={reason} change={setReason} />
        <p className="quiet small">{t('expose.why-says')}</p>
      </ToldForm>
    </details>
  );
};
