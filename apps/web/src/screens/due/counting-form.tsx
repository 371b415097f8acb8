import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { ChoiceField, TextField } from '../../ui/field';
import { useSpeech } from '../../words/words';
import { TextArea } from '../claims/text-area';
import { ToldForm } from '../claims/told-form';

type Counting = AnswerOf<'determinations'>['counting'];
type Props = { readonly counting: Counting; readonly decides: boolean; readonly again: () => void };
const LAST_DAY = ['as-it-falls', 'next-working-day'] as const;
const LAST_DAY_WORDS = { 'as-it-falls': 'due.as-it-falls', 'next-working-day': 'due.next-working' } as const;
const DAY = /^\d{4}-\d{2}-\d{2}$/;
/** A Sunday: the seven days from it have their names in every language. */
const SUNDAY = Date.UTC(2026, 10, 1);
const DAY_MS = 86_400_000;

/** How days are counted is counsel's to say: the regulation sends one to 24 CFR 26.16(a), and nobody here has read it. */
export const CountingForm = ({ counting, decides, again }: Props): ReactNode => {
  const { t, locale } = useSpeech();
  const telling = useTell(again);
  const [lastDay, setLastDay] = useState(counting.lastDay);
  const [off, setOff] = useState<readonly number[]>(counting.daysOff);
  const [holidays, setHolidays] = useState(counting.holidays.join('\n'));
  const [warnDays, setWarnDays] = useState(String(counting.warnDays));
  const days = holidays.split(/[\s,;]+/).filter((one) => one !== '');
  const ready = days.every((one) => DAY.test(one)) && /^\d{1,2}$/.test(warnDays) && off.length < 7;
  const name = (at: number): string =>
    new Intl.DateTimeFormat(locale, { weekday: 'long', timeZone: 'UTC' }).format(SUNDAY + at * DAY_MS);
  const send = (): void => {
    const rule = LAST_DAY.find((one) => one === lastDay) ?? 'as-it-falls';
    const body = { lastDay: rule, daysOff: [...off], holidays: days, warnDays: Number(warnDays) };
    void telling.send('countingRule', body);
  };
  const rule = LAST_DAY.find((one) => one === counting.lastDay) ?? 'as-it-falls';
  return (
    <details className="no-print">
      <summary className="claim-more">{t('due.counting')}</summary>
      <p>{t('due.counting-says', { rule: t(LAST_DAY_WORDS[rule]), count: counting.warnDays })}</p>
      {decides && (
        <ToldForm telling={telling} ready={ready} says={t('claims.record')} send={send}>
          <ChoiceField
            name={t('due.last-day')}
            value={lastDay}
            from={LAST_DAY.map((id) => ({ id, says: t(LAST_DAY_WORDS[id]) }))}
            change={setLastDay}
          />
          <fieldset className="field">
            <legend className="field-name">{t('due.days-off')}</legend>
            <div className="choices">
              {[0, 1, 2, 3, 4, 5, 6].map((at) => (
                <button
                  key={at}
                  type="button"
                  className="button"
                  aria-pressed={off.includes(at)}
                  onClick={() => setOff(off.includes(at) ? off.filter((one) => one !== at) : [...off, at])}
                >
                  {name(at)}
                </button>
              ))}
            </div>
          </fieldset>
          <TextArea name={t('due.holidays')} value={holidays} change={setHolidays} />
          <TextField name={t('due.warn')} value={warnDays} change={setWarnDays} mono />
        </ToldForm>
      )}
    </details>
  );
};
