import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { TableFrame } from '../../ui/table-frame';
import { useSpeech } from '../../words/words';

type Row = AnswerOf<'yield'>['rows'][number];
const CLASSES = [
  ['class.nonconformance', 'nonconformances'],
  ['class.punch', 'punch'],
  ['class.shortage', 'shortages'],
  ['class.record', 'record'],
] as const;

/** Each class has a rate of its own: only the first counts against yield. Always a pair; nothing is divided by nought. */
export const ClassRates = ({ rows }: { readonly rows: readonly Row[] }): ReactNode => {
  const { t, say, locale } = useSpeech();
  const format = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
  const rate = (count: number, left: number): string =>
    left === 0 ? '–' : format.format((100 * count) / left);
  return (
    <section className="chart">
      <div className="chart-head">
        <h2>{t('rates.title')}</h2>
        <p className="quiet">{t('rates.says')}</p>
      </div>
      <TableFrame name={t('rates.title')}>
        <table className="dense">
          <thead>
            <tr>
              <th scope="col">{t('yield.station')}</th>
              <th scope="col" className="number">
                {t('yield.left')}
              </th>
              {CLASSES.map(([word]) => (
                <th key={word} scope="col" className="number">
                  {t(word)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row) => (
              <tr key={row.station}>
                <th scope="row">{say(row.name)}</th>
                <td className="number">{row.left}</td>
                {CLASSES.map(([word, field]) => (
                  <td key={word} className="number">
                    {rate(row[field], row.left)} <span className="quiet">({row[field]})</span>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};
