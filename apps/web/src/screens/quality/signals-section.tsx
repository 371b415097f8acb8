import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { Mark } from '../../ui/mark';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import type { Span } from './span';
import { BudgetForm } from './budget-form';
import { useAgainSoon } from './use-again-soon';
import { useFigures } from './use-figures';

type Signals = AnswerOf<'signals'>;
type Station = Signals['stations'][number];

const WIDTH = 96;
const HEIGHT = 24;

/** The weeks of the span as a small line, 100 % at the top; a week in which nothing left is a gap. */
const Sparkline = ({ weeks }: Pick<Station, 'weeks'>): ReactNode => {
  const step = WIDTH / Math.max(1, weeks.length - 1);
  const low = Math.min(0.8, ...weeks.flatMap(({ left, clean }) => (left === 0 ? [] : [clean / left])));
  const height = (share: number): number => 2 + ((1 - share) / (1 - low)) * (HEIGHT - 4);
  const path = weeks
    .map(({ left, clean }, at) => {
      if (left === 0) return '';
      const isNew = at === 0 || weeks[at - 1]?.left === 0;
      return `${isNew ? 'M' : 'L'}${String(at * step)} ${String(height(clean / left))}`;
    })
    .join('');
  return (
    <svg width={WIDTH} height={HEIGHT} viewBox={`0 0 ${String(WIDTH)} ${String(HEIGHT)}`} aria-hidden="true">
      <path d={path} fill="none" stroke="currentColor" strokeWidth="1.5" />
    </svg>
  );
};

const Trend = ({ station }: { readonly station: Station }): ReactNode => {
  const { t } = useSpeech();
  const { day, of } = useFigures();
  const { alarm, plan } = station;
  if (plan === null) return t('yield.nothing-left');
  if (alarm === null) return t('signals.steady');
  const { since, after } = alarm.change;
  return (
    <span className="block-note">
      <Mark name={alarm.acknowledged === null ? 'due' : 'proven'} size={20} />
      {t(alarm.acknowledged === null ? 'signals.worse' : 'signals.known', {
        since: day(since),
        now: of(after.count, after.of),
      })}
    </span>
  );
};

const Title = ({ stations }: Signals): ReactNode => {
  const { t } = useSpeech();
  const open = stations.filter(({ alarm }) => alarm?.acknowledged === null);
  return <h2>{t('signals.title', { count: open.length })}</h2>;
};

/** Which stations are getting worse, and whether to believe it. Open items first. */
export const SignalsSection = ({ span }: { readonly span: Span }): ReactNode => {
  const { t, say } = useSpeech();
  const { answer, trouble, again } = useQuestion('signals', span);
  useAgainSoon(again);
  if (trouble !== null) return <TroubleNotice trouble={trouble} again={again} />;
  if (answer === null) return null;
  const { budget } = answer;
  const isOpen = ({ alarm }: Station): number => (alarm?.acknowledged === null ? 0 : 1);
  return (
    <section className="chart">
      <div className="chart-head">
        <Title {...answer} />
        <p className="quiet">
          {t('signals.says', { budget: budget.falseAlarmsPerMonth, charts: budget.charts })}
        </p>
      </div>
      <TableFrame name={t('signals.table')}>
        <table className="dense">
          <thead>
            <tr>
              <th scope="col">{t('yield.station')}</th>
              <th scope="col">{t('signals.weeks')}</th>
              <th scope="col">{t('signals.trend')}</th>
            </tr>
          </thead>
          <tbody>
            {answer.stations
              .toSorted((a, b) => isOpen(a) - isOpen(b))
              .map((station) => (
                <tr key={station.station}>
                  <th scope="row">
                    <Link to={places.stationQuality(station.station)}>{say(station.name)}</Link>
                  </th>
                  <td>
                    <Sparkline weeks={station.weeks} />
                  </td>
                  <td>
                    <Trend station={station} />
                  </td>
                </tr>
              ))}
          </tbody>
        </table>
      </TableFrame>
      <BudgetForm budget={budget} again={again} />
    </section>
  );
};
