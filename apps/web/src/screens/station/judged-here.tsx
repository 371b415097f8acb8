import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';

/** Whose word this is: the tablet's own, until the record has it. */
export const JudgedHere = (): ReactNode => {
  const { t } = useSpeech();
  return (
    <p className="notice due">
      <Mark name="due" size={28} />
      <span className="grow">
        <strong>{t('here')}.</strong> {t('here.says')}
      </span>
    </p>
  );
};
