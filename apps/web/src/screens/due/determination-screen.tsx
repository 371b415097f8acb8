import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Serial } from '../../ui/serial';
import { useSoon } from '../../ui/soon';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import { mayDetermine } from '../claims/claim';
import { useDay } from '../claims/days';
import { DueSays } from '../claims/standing';
import type { File } from './file';
import { FileSteps } from './file-steps';
import { FrozenTrace } from './frozen-trace';
import '../release/release.css';
import '../claims/claims.css';

/** The file of one determination: its clocks, who decided what and on which bases, and what was known when it began. */
export const DeterminationScreen = ({ determination }: { readonly determination: string }): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const { answer, trouble, again } = useQuestion('determination', { determination });
  const soon = useSoon(again);
  useLive(soon);
  const day = useDay();
  const isAgency = me.roles.includes('agency-inspector');
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && (
        <>
          <div className="page-head">
            <div>
              <h1>{t('due.file', { what: say(answer.says) })}</h1>
              <p>
                {t('due.opened', {
                  day: day(answer.receivedOn),
                  by: answer.openedBy,
                  position: answer.asOfPosition,
                })}
              </p>
              <p className="row">
                {answer.claims.map((id) => (
                  <Link key={id} to={places.claim(id)}>
                    {id}
                  </Link>
                ))}
              </p>
            </div>
            <button type="button" className="button no-print" onClick={() => window.print()}>
              {t('due.print')}
            </button>
          </div>
          <Clocks file={answer} />
          {(mayDetermine(me) || isAgency) && (
            <FileSteps file={answer} agencyOnly={!mayDetermine(me)} again={again} />
          )}
          <Decided file={answer} />
          <Homes file={answer} />
          <FrozenTrace file={answer} />
          <p className="notice">{t('due.counsel')}</p>
        </>
      )}
    </main>
  );
};

const Clocks = ({ file }: { readonly file: File }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useDay();
  return (
    <section className="stack tight">
      <h2>{t('due.clocks')}</h2>
      <TableFrame name={t('due.clocks')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('due.what')}</th>
              <th scope="col">{t('due.from')}</th>
              <th scope="col">{t('due.standing')}</th>
              <th scope="col">{t('due.by-rule')}</th>
            </tr>
          </thead>
          <tbody>
            {file.clocks.map((clock) => (
              <tr key={clock.clock}>
                <th scope="row">{say(clock.says)}</th>
                <td>{day(clock.start)}</td>
                <td>
                  <DueSays due={{ day: clock.due, doneOn: clock.doneOn, standing: clock.standing }} />
                </td>
                <td className="small">
                  24 CFR {clock.section}
                  {!clock.verified && ` · ${t('due.unread')}`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};

/** In turn, with who said it: an earlier decision stays in sight when a later one takes its place. */
const Decided = ({ file }: { readonly file: File }): ReactNode => {
  const { t, say } = useSpeech();
  const times = useTimes();
  return (
    <section className="stack tight">
      <h2>{t('due.decided')}</h2>
      <ul className="rows">
        {file.history.map((entry) => (
          <li key={`${entry.at} ${entry.type} ${say(entry.says)}`}>
            <div className="grow">
              <p>{say(entry.says)}</p>
              {entry.methods.length > 0 && (
                <p className="small">{t('due.by-methods', { methods: entry.methods.join(', ') })}</p>
              )}
              {entry.note !== null && <p>“{entry.note}”</p>}
            </div>
            <p className="quiet small">
              {entry.by} · {times.moment(entry.at)}
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
};

const HOW: Readonly<Record<string, WordKey>> = {
  notified: 'due.notified',
  corrected: 'due.corrected',
  refused: 'due.refused',
};
const WHERE: Readonly<Record<string, WordKey>> = {
  line: 'expose.line',
  yard: 'expose.yard',
  sold: 'expose.sold',
};

const Homes = ({ file }: { readonly file: File }): ReactNode => {
  const { t } = useSpeech();
  const day = useDay();
  const inClass = new Set(file.classHomes ?? []);
  const name = t('due.homes', { count: file.exposure.length, inClass: inClass.size });
  return (
    <section className="stack tight">
      <h2>{name}</h2>
      <p className="quiet">{t('due.frozen', { position: file.asOfPosition })}</p>
      <TableFrame name={name} short>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('complaint.home')}</th>
              <th scope="col">{t('expose.where')}</th>
              <th scope="col">{t('due.in-class')}</th>
              <th scope="col">{t('due.remedy')}</th>
            </tr>
          </thead>
          <tbody>
            {file.exposure.map(({ home, where }) => (
              <tr key={home}>
                <th scope="row">
                  <Link to={places.home(home)}>
                    <Serial of={home} />
                  </Link>
                </th>
                <td>{t(WHERE[where] ?? 'expose.line')}</td>
                <td>{inClass.has(home) ? t('due.yes') : ''}</td>
                <td>
                  {file.remedied
                    .filter((one) => one.home === home)
                    .map(({ how, doneOn }) => `${t(HOW[how] ?? 'due.notified')} ${day(doneOn)}`)
                    .join(', ')}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};
