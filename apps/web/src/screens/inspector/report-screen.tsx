import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { csvOf } from '../../charts/csv';
import { save } from '../../charts/save';
import { places } from '../../router/places';
import { swapTo, useAddress } from '../../router/router';
import { TextField } from '../../ui/field';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import '../release/release.css';

type Report = AnswerOf<'agencyReport'>;

const thisMonth = (): string => new Date().toISOString().slice(0, 7);

const Labelled = ({ report }: { readonly report: Report }): ReactNode => {
  const { t } = useSpeech();
  return (
    <section className="stack" aria-labelledby="labelled">
      <h2 id="labelled">
        {t('report.labelled', {
          single: report.labelled.single,
          multi: report.labelled.multi,
          sections: report.labelled.sections,
        })}
      </h2>
      <TableFrame name={t('report.homes')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('holds.home')}</th>
              <th scope="col">{t('report.model')}</th>
              <th scope="col" className="number">
                {t('report.sections')}
              </th>
              <th scope="col">{t('report.labels')}</th>
              <th scope="col">{t('label-log.day')}</th>
            </tr>
          </thead>
          <tbody>
            {report.homes.map((home) => (
              <tr key={home.home}>
                <td className="mono">{home.home}</td>
                <td>{home.model}</td>
                <td className="number">{home.sections}</td>
                <td className="mono">{home.labels.join(', ')}</td>
                <td className="mono">{home.labelledOn}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};

const Failed = ({ report }: { readonly report: Report }): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <section className="stack" aria-labelledby="failed">
      <h2 id="failed">
        {t('report.failed', { homes: report.homesWithFailures, failures: report.failures.length })}
      </h2>
      <ul className="rows">
        {report.failures.map((one, index) => (
          <li key={index}>
            <span className="mono">{one.day}</span>
            <span className="mono">{one.serial}</span>
            <span className="grow">{say(one.says)}</span>
          </li>
        ))}
      </ul>
    </section>
  );
};

const rowsOf = (report: Report, say: (words: Report['failures'][number]['says']) => string): string[][] => [
  ['month', 'kind', 'serial', 'day', 'sections', 'says'],
  ...report.homes.map((home) => [
    report.month,
    'labelled',
    home.home,
    home.labelledOn,
    String(home.sections),
    home.labels.join(' '),
  ]),
  ...report.visits.map((visit) => [report.month, 'visit', '', visit.day, '', visit.by]),
  ...report.failures.map((one) => [report.month, 'failure', one.serial, one.day, '', say(one.says)]),
];

/** The month as the agency reports it by the 20th (24 CFR 3282.553): on paper, and as a table. */
export const ReportScreen = (): ReactNode => {
  const { t, say } = useSpeech();
  const month = useAddress().searchParams.get('month') ?? thisMonth();
  const { answer, trouble, again } = useQuestion('agencyReport', { month });
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>{t('report.title', { month })}</h1>
          {answer !== null && <p>{answer.plant}</p>}
        </div>
        <div className="row no-print">
          <TextField
            name={t('report.month')}
            value={month}
            change={(next) => swapTo(`${places.agencyReport}?month=${next}`)}
            type="month"
          />
          <button type="button" className="button" onClick={() => window.print()}>
            {t('print')}
          </button>
          {answer !== null && (
            <button
              type="button"
              className="button"
              onClick={() =>
                save(`agency-${month}.csv`, new Blob([csvOf(rowsOf(answer, say))], { type: 'text/csv' }))
              }
            >
              CSV
            </button>
          )}
        </div>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && (
        <>
          <Labelled report={answer} />
          <p>{t('report.visits', { count: answer.visits.length })}</p>
          <Failed report={answer} />
        </>
      )}
    </main>
  );
};
