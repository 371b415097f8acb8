import { useMemo } from 'react';
import { useSession } from '../session/session';
import { lengthOf, timesOf } from './times';
import { useSpeech } from './words';

/** Times in the reader's language and in the plant's own zone, wherever the screen is. */
export const useTimes = () => {
  const { locale, t } = useSpeech();
  const zone = useSession().plant?.zone;
  return useMemo(
    () => ({
      ...timesOf(locale, zone),
      since: (instant: string, nowMs: number): string => t('length', lengthOf(Date.parse(instant), nowMs)),
    }),
    [locale, t, zone],
  );
};
