import type { ReactNode } from 'react';
import type { Trouble } from '../../api/client';
import { Mark } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

/** A link that opens nothing says what to do; anything else is said as everywhere. */
export const LinkTrouble = ({
  trouble,
  again,
}: {
  readonly trouble: Trouble;
  readonly again: () => void;
}): ReactNode => {
  const { t } = useSpeech();
  const opensNothing = trouble.kind === 'problem' && trouble.code === 'link-opens-nothing';
  if (!opensNothing) return <TroubleNotice trouble={trouble} again={again} />;
  return (
    <div className="notice refused" role="alert">
      <Mark name="refused" size={32} />
      <div>
        <h1>{t('link.none')}</h1>
        <p>{t('link.none-says')}</p>
      </div>
    </div>
  );
};
