import { timesOf } from '../../words/times';
import { useSpeech } from '../../words/words';

/** A day as the floor's calendar had it: the same wherever it is read. */
export const useBookDay = (): ((day: string) => string) => {
  const { locale } = useSpeech();
  return timesOf(locale, 'UTC').day;
};
