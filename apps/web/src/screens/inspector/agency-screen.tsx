import type { Agency } from './agency';
import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import { Failures } from './failures';
import { HomesSeen } from './homes-seen';
import { Observations } from './observations';
import { RedTags } from './red-tags';
import { Visits } from './visits';
import '../release/release.css';

const EVERYTHING = {};

/** Failures on more than one home lately: look there more often (24 CFR 3282.362(c)(1)). */
const Repeated = ({ agency }: { readonly agency: Agency }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  if (agency.repeated.length === 0) return null;
  return (
    <div className="notice due">
      <Mark name="due" size={32} />
      <ul className="grow stack tight">
        {agency.repeated.map(({ station, homes, failures }) => (
          <li key={station}>
            {t('agency.repeated', { station: say(named(plant.stations, station)), homes, failures })}
          </li>
        ))}
      </ul>
    </div>
  );
};

/** The inspection agency's own screen: what is open, what it has tagged, what it has not seen, what it noted. */
export const AgencyScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const { answer, trouble, again } = useQuestion('agency', EVERYTHING);
  const soon = useSoon(again);
  useLive(soon);
  const isTheirs = me.roles.includes('agency-inspector');
  const unseen = (answer?.homes ?? []).filter(({ seen }) => !seen).length;
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>
            {answer === null
              ? t('nav.agency')
              : t('agency.title', { failures: answer.failures.length, tags: answer.tags.length })}
          </h1>
          {answer !== null && <p>{t('agency.unseen', { count: unseen })}</p>}
        </div>
        <Link className="button" to={places.agencyReport}>
          {t('agency.report')}
        </Link>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && (
        <>
          <Repeated agency={answer} />
          <RedTags agency={answer} again={again} isTheirs={isTheirs} />
          <HomesSeen agency={answer} again={again} isTheirs={isTheirs} />
          <Failures agency={answer} again={again} isTheirs={isTheirs} />
          <Observations agency={answer} again={again} isTheirs={isTheirs} />
          <Visits agency={answer} again={again} isTheirs={isTheirs} />
        </>
      )}
    </main>
  );
};
