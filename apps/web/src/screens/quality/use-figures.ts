import { useMemo } from 'react';
import { useSpeech } from '../../words/words';

/** Shares as whole percent: with a few dozen sections, more digits would pretend. */
export const useFigures = () => {
  const { t, locale } = useSpeech();
  return useMemo(() => {
    const format = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
    const percent = (share: number | null): string => (share === null ? '–' : format.format(share));
    const day = new Intl.DateTimeFormat(locale, {
      day: 'numeric',
      month: 'short',
      year: 'numeric',
      timeZone: 'UTC',
    });
    const shortDay = new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', timeZone: 'UTC' });
    return {
      percent,
      of: (of: number, all: number): string => t('yield.of', { of, all }),
      range: ({ low, high }: { low: number | null; high: number | null }): string =>
        `${percent(low)}–${percent(high)}`,
      day: (date: string): string => day.format(new Date(date)),
      shortDay: (date: string): string => shortDay.format(new Date(date)),
    };
  }, [t, locale]);
};
