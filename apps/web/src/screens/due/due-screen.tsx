import type { AnswerOf } from '@libs/contracts';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { mayDetermine } from '../claims/claim';
import { useDay } from '../claims/days';
import { DUE_MARKS, DueSays } from '../claims/standing';
import { CountingForm } from './counting-form';
import '../release/release.css';
import '../claims/claims.css';

type Files = AnswerOf<'determinations'>;
type File = Files['determinations'][number];
const EVERYTHING = {};

const isOpen = ({ doneOn }: File['clocks'][number]): boolean => doneOn === null;

/** What is due next, over all files and the claims in none; and how days are counted. */
export const DueScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const { answer, trouble, again } = useQuestion('determinations', EVERYTHING);
  const files = answer?.determinations ?? [];
  const clocks = files.flatMap((file) => file.clocks.filter(isOpen));
  const count = (standing: string): number => clocks.filter((clock) => clock.standing === standing).length;
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>
            {answer === null
              ? t('nav.due')
              : t('due.title', { count: files.length, over: count('over'), soon: count('soon') })}
          </h1>
          <p>{t('due.title-says')}</p>
        </div>
        <Link className="button no-print" to={places.claims}>
          {t('nav.claims')}
        </Link>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <ul className="rows">
        {files.map((file) => (
          <FileRow key={file.determination} file={file} />
        ))}
      </ul>
      <section className="stack tight">
        <h2>{t('due.calendar')}</h2>
        <p>{t('due.calendar-says')}</p>
        <p>
          <a className="button" href="/api/due-days" download="due-days.ics">
            {t('due.calendar-take')}
          </a>
        </p>
      </section>
      {answer !== null && (
        <CountingForm
          key={JSON.stringify(answer.counting)}
          counting={answer.counting}
          decides={mayDetermine(me)}
          again={again}
        />
      )}
      <p className="quiet small">{t('due.counsel')}</p>
    </main>
  );
};

const FileRow = ({ file }: { readonly file: File }): ReactNode => {
  const { t, say } = useSpeech();
  const day = useDay();
  const open = file.clocks.filter(isOpen).sort((one, other) => one.due.localeCompare(other.due));
  const [next] = open;
  return (
    <li>
      <Mark name={DUE_MARKS[next?.standing ?? 'done']} size={28} />
      <div className="grow stack tight">
        <p>
          <Link to={places.determination(file.determination)}>{say(file.says)}</Link>
        </p>
        <p className="quiet small">
          {t('due.of-claims', { count: file.claims.length, day: day(file.receivedOn) })}
        </p>
      </div>
      <ul className="claim-due small">
        {open.map((clock) => (
          <li key={clock.clock}>
            {say(clock.says)}: <DueSays due={{ day: clock.due, doneOn: null, standing: clock.standing }} />
          </li>
        ))}
        {open.length === 0 && <li>{t('due.all-done')}</li>}
      </ul>
    </li>
  );
};
