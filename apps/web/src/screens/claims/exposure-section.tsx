import { useEffect, useRef, useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { useTell } from '../../api/use-tell';
import { csvOf } from '../../charts/csv';
import { save } from '../../charts/save';
import { places } from '../../router/places';
import { Link, goTo } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { Serial } from '../../ui/serial';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { AddressesForm } from './addresses-form';
import { mayDetermine } from './claim';
import type { Candidate, Claim, Exposure, ExposureMethod } from './claim';
import { HoldThem } from './hold-them';

type Props = { readonly claim: Claim; readonly cause: Candidate };
const METHODS = ['whole-group', 'exact'] as const;
const METHOD_WORDS = { 'whole-group': 'expose.whole-group', exact: 'expose.exact' } as const;
const METHOD_SAYS = { 'whole-group': 'expose.whole-group-says', exact: 'expose.exact-says' } as const;
const WHERE = { line: 'expose.line', yard: 'expose.yard', sold: 'expose.sold' } as const;

/** The homes that share the cause, each with its reason: to hold, to write to, to determine on. */
export const ExposureSection = ({ claim, cause }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const [method, setMethod] = useState<ExposureMethod>('whole-group');
  const { answer, trouble } = useQuestion('exposure', { claim: claim.claim, cause: cause.key, method });
  const counts = answer?.counts ?? { line: 0, yard: 0, sold: 0 };
  const section = useRef<HTMLElement>(null);
  // Once, when it opens: news that come later leave the reader's place alone.
  useEffect(() => section.current?.focus(), []);
  return (
    <section className="stack" aria-labelledby="exposure" tabIndex={-1} ref={section}>
      <h2 id="exposure">{t('expose.title', { cause: say(cause.says) })}</h2>
      <div className="choices no-print" role="group" aria-label={t('expose.method')}>
        {METHODS.map((one) => (
          <button
            key={one}
            type="button"
            className="button"
            aria-pressed={method === one}
            onClick={() => setMethod(one)}
          >
            {t(METHOD_WORDS[one])}
          </button>
        ))}
      </div>
      <p className="quiet">{t(METHOD_SAYS[method])}</p>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      {answer !== null && (
        <>
          <p>
            <strong>{t('expose.counts', { count: answer.homes.length, ...counts })}</strong>
          </p>
          <Homes exposure={answer} />
          <Actions claim={claim} cause={cause} exposure={answer} />
        </>
      )}
    </section>
  );
};

const ORDER = ['line', 'yard', 'sold'] as const;

const Homes = ({ exposure }: { readonly exposure: Exposure }): ReactNode => {
  const { t, say } = useSpeech();
  const rows = [...exposure.homes].sort(
    (one, other) => ORDER.indexOf(one.where) - ORDER.indexOf(other.where),
  );
  return (
    <TableFrame name={t('expose.homes')} short>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('complaint.home')}</th>
            <th scope="col">{t('expose.where')}</th>
            <th scope="col">{t('expose.reason')}</th>
            <th scope="col">{t('expose.sections')}</th>
            <th scope="col">{t('expose.claims')}</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.home}>
              <th scope="row">
                <Link to={places.home(row.home)}>
                  <Serial of={row.home} />
                </Link>
              </th>
              <td>
                <Mark name={row.where === 'sold' ? 'note' : 'due'} size={20} /> {t(WHERE[row.where])}
              </td>
              <td>{say(row.reasonSays)}</td>
              <td className="mono small">{row.sections.join(', ')}</td>
              <td className="small">
                {row.claims.map((id) => (
                  <Link key={id} to={places.claim(id)}>
                    {id}{' '}
                  </Link>
                ))}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </TableFrame>
  );
};

type ActionProps = Props & { readonly exposure: Exposure };
const Actions = ({ claim, cause, exposure }: ActionProps): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const telling = useTell(() => undefined);
  const decides = mayDetermine(me);
  const openFile = async (): Promise<void> => {
    const body = { claim: claim.claim, cause: cause.key, method: exposure.method };
    const told = await telling.send('determinationOpening', body);
    if (told !== undefined) goTo(places.determination(told.determination));
  };
  const rows = exposure.homes.map(({ home, where, reasonSays, sections }) => [
    home,
    sections.join(' '),
    t(WHERE[where]),
    say(reasonSays),
  ]);
  const head = [t('complaint.home'), t('expose.sections'), t('expose.where'), t('expose.reason')];
  return (
    <div className="stack no-print">
      <div className="row">
        {decides && <HoldThem claim={claim} cause={cause} exposure={exposure} />}
        <button
          type="button"
          className="button"
          onClick={() => save(`${claim.claim}.csv`, new Blob([csvOf([head, ...rows])], { type: 'text/csv' }))}
        >
          {t('chart.csv')}
        </button>
        {decides && (
          <button
            type="button"
            className="button primary"
            disabled={telling.busy}
            onClick={() => void openFile()}
          >
            {t('expose.open-file')}
          </button>
        )}
      </div>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      {decides && <AddressesForm claim={claim.claim} cause={cause.key} method={exposure.method} />}
    </div>
  );
};
