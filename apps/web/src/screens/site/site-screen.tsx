import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { isQualityManager, useSignedIn } from '../../session/session';
import { TextField } from '../../ui/field';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { Serial } from '../../ui/serial';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import '../release/release.css';

type Home = AnswerOf<'site'>['homes'][number];
const EVERYTHING = {};

const Destination = ({ home, done }: { readonly home: Home; readonly done: () => void }): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(done);
  const [destination, setDestination] = useState(home.destination ?? '');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('destination', { home: home.home, destination: destination.trim() });
  };
  return (
    <form className="office-form grow no-print" onSubmit={submit}>
      <TextField name={t('site.to')} value={destination} change={setDestination} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <div>
        <button type="submit" className="button" disabled={telling.busy || destination.trim() === ''}>
          {t('site.set')}
        </button>
      </div>
    </form>
  );
};

const HomeRow = ({ home, again }: { readonly home: Home; readonly again: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const times = useTimes();
  const now = useNow();
  const [asks, setAsks] = useState(false);
  const done = (): void => {
    setAsks(false);
    again();
  };
  return (
    <li>
      <Mark name={home.holds > 0 ? 'held' : home.done === 0 ? 'waiting' : 'due'} size={28} />
      <div className="grow stack tight">
        <p>
          <Link to={places.home(home.home)}>
            <Serial of={home.home} />
          </Link>{' '}
          {home.model} · {home.destination ?? t('site.nowhere')}
          {home.finishedAtSite ? ` · ${t('site.finished-there')}` : ''}
        </p>
        <p className="quiet small">
          {t('site.progress', { done: home.done, of: home.of })} ·{' '}
          {t('site.open', { list: home.open.map(({ name }) => say(name)).join(', ') })}
        </p>
      </div>
      <p className="age">{home.shippedAt === '' ? '' : times.since(home.shippedAt, now)}</p>
      {isQualityManager(me) && (
        <button type="button" className="button no-print" aria-pressed={asks} onClick={() => setAsks(!asks)}>
          {t('site.to')}
        </button>
      )}
      {asks && <Destination home={home} done={done} />}
    </li>
  );
};

/** Homes on their way and at their site, until all work there is in. */
export const SiteScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('site', EVERYTHING);
  const soon = useSoon(again);
  useLive(soon);
  return (
    <main className="page" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>{answer === null ? t('nav.site') : t('site.title', { count: answer.homes.length })}</h1>
          <p>{t('site.how')}</p>
        </div>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <ul className="rows">
        {answer?.homes.map((home) => (
          <HomeRow key={home.home} home={home} again={again} />
        ))}
      </ul>
    </main>
  );
};
