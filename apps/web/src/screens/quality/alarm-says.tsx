import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { useFigures } from './use-figures';

export type Alarm = NonNullable<AnswerOf<'stationChart'>['unit']>['alarms'][number];

/** What changed, since when, how sure, and what to look at first. */
export const AlarmSays = ({
  alarm,
  station,
}: {
  readonly alarm: Alarm;
  readonly station: string;
}): ReactNode => {
  const { t } = useSpeech();
  const { day, of, percent, range } = useFigures();
  const { before, after, since, beforeInterval, afterInterval } = alarm.change;
  return (
    <div className="alarm stack tight">
      <p className="block-note">
        <Mark name={alarm.acknowledged === null ? 'due' : 'proven'} size={24} />
        <strong>{t('alarm.says', { station, since: day(since), now: of(after.count, after.of) })}</strong>
      </p>
      <p>
        {t('alarm.before', {
          before: before.of === 0 ? '–' : of(before.count, before.of),
          share: percent(before.of === 0 ? null : before.count / before.of),
          range: range(beforeInterval),
          now: percent(after.count / after.of),
          nowRange: range(afterInterval),
        })}
      </p>
      <p>{t('alarm.sure', { day: day(alarm.day) })}</p>
      <p>{t('alarm.look', { since: day(since) })}</p>
      {alarm.acknowledged !== null && (
        <p className="quiet">
          {t('alarm.acknowledged', { by: alarm.acknowledged.by ?? '', note: alarm.acknowledged.note ?? '–' })}
        </p>
      )}
    </div>
  );
};
