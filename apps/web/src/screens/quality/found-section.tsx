import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';

type Chart = AnswerOf<'stationChart'>;

/** Time from defect to found: how many stations later, how many days later, and how much reached the field. */
export const FoundSection = ({
  found,
  station,
}: {
  readonly found: Chart['found'];
  readonly station: string;
}): ReactNode => {
  const { t, say, locale } = useSpeech();
  const days = new Intl.NumberFormat(locale, { maximumFractionDigits: 1 });
  const total = found.reduce((sum, { count }) => sum + count, 0);
  const late = found
    .filter(({ stationsLater }) => stationsLater !== 0)
    .reduce((sum, { count }) => sum + count, 0);
  if (total === 0) return null;
  let sofar = 0;
  return (
    <section className="chart">
      <div className="chart-head">
        <h2>{t('found.title', { station, late, total })}</h2>
        <p className="quiet">{t('found.says')}</p>
      </div>
      <TableFrame name={t('found.table')}>
        <table className="dense">
          <thead>
            <tr>
              <th scope="col">{t('found.where')}</th>
              <th scope="col" className="number">
                {t('found.stations')}
              </th>
              <th scope="col" className="number">
                {t('found.days')}
              </th>
              <th scope="col" className="number">
                {t('pareto.count')}
              </th>
              <th scope="col" className="number">
                {t('found.sofar')}
              </th>
            </tr>
          </thead>
          <tbody>
            {found.map(({ at, name, stationsLater, daysLater, count }) => {
              sofar += count;
              return (
                <tr key={at ?? 'field'}>
                  <th scope="row">{name === null ? t('found.field') : say(name)}</th>
                  <td className="number">{stationsLater ?? '–'}</td>
                  <td className="number">{daysLater === null ? '–' : days.format(daysLater)}</td>
                  <td className="number">{count}</td>
                  <td className="number">{sofar}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};
