import type { ReactNode } from 'react';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';

export type Invitation = { readonly name: string; readonly code: string; readonly until: string };

/** In clear once, here: whoever closes this has to invite anew. */
export const Invited = ({
  name,
  code,
  until,
  close,
}: Invitation & { readonly close: () => void }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  return (
    <div className="notice proven" role="status">
      <p className="grow">
        {t('people.invited', { name })} <code className="token">{code}</code>
        <br />
        {t('people.invited-until', { until: times.moment(until) })}
      </p>
      <button type="button" className="button" onClick={close}>
        {t('people.pin-noted')}
      </button>
    </div>
  );
};
