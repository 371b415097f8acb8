import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import type { Tally } from './values';

/** What will come of it when it is sent as it stands. Nothing here stops the sending: a fact is a fact. */
export const TallySays = ({ tally }: { readonly tally: Tally }): ReactNode => {
  const { t } = useSpeech();
  if (tally.failing === 0 && tally.missing === 0) return null;
  return (
    <div role="status" className="stack tight">
      {tally.failing > 0 && (
        <p className="row">
          <Mark name="held" />{' '}
          <span className="tally-line">{t('tally.failing', { count: tally.failing })}</span>
        </p>
      )}
      {tally.missing > 0 && (
        <p className="row">
          <Mark name="note" />{' '}
          <span className="tally-line">{t('tally.missing', { count: tally.missing })}</span>
        </p>
      )}
    </div>
  );
};
