import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../api/client';
import { places } from '../router/places';
import type { Place } from '../router/places';
import { barFor } from '../router/screens';
import { Link, goTo } from '../router/router';
import { homeStation, useSession } from '../session/session';
import { useSpeech } from '../words/words';
import type { WordKey } from '../words/words';
import { DisplayPanel } from './display-panel';
import { UnsentNotice } from './unsent';

/** Studs between two plates, 16 inches on centre. */
const Brand = (): ReactNode => (
  <Link to={places.start} className="brand">
    <svg viewBox="0 0 32 32" aria-hidden="true" focusable="false">
      <path d="M3 6h26M3 26h26M6 6v20M16 6v20M26 6v20" stroke="currentColor" strokeWidth="3" fill="none" />
    </svg>
    Studbook
  </Link>
);

/** A tape measure: a tick every 16 units, a long one every third. */
const Tape = (): ReactNode => (
  <svg className="tape" aria-hidden="true" focusable="false">
    <defs>
      <pattern id="tape" width="48" height="10" patternUnits="userSpaceOnUse">
        <path d="M0 .5h48M.5 0v10M16.5 0v5M32.5 0v5" stroke="currentColor" fill="none" />
      </pattern>
    </defs>
    <rect width="100%" height="10" fill="url(#tape)" />
  </svg>
);

const NavLinks = ({ place, onGo }: { readonly place: Place; readonly onGo: () => void }): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSession();
  const station = homeStation() ?? me?.stations[0];
  const links: readonly (readonly [Place['screen'], string, WordKey])[] = [
    ...(station === undefined ? [] : [['station', places.station(station), 'nav.station'] as const]),
    ...barFor(me?.roles ?? []).map(({ screen, to, title }) => [screen, to, title] as const),
    ['start', places.start, 'nav.all'],
  ];
  return (
    <div className="top-links">
      {links.map(([screen, to, word]) => (
        <Link
          key={screen}
          to={to}
          className="top-link"
          onClick={onGo}
          aria-current={place.screen === screen ? 'page' : undefined}
        >
          {t(word)}
        </Link>
      ))}
    </div>
  );
};

const Settings = ({
  display,
  onDisplay,
}: {
  readonly display: boolean;
  readonly onDisplay: () => void;
}): ReactNode => {
  const { t, language, speak } = useSpeech();
  const { me, forget } = useSession();
  const leave = async (): Promise<void> => {
    await ask('signOut');
    await forget();
    goTo(places.signIn);
  };
  return (
    <div className="top-settings">
      <button
        type="button"
        className="button plain"
        lang={language === 'en' ? 'es' : 'en'}
        onClick={() => speak(language === 'en' ? 'es' : 'en')}
      >
        {t('other-language')}
      </button>
      <button type="button" className="button plain" aria-expanded={display} onClick={onDisplay}>
        {t('display')}
      </button>
      {me !== null && (
        <button type="button" className="button plain" onClick={() => void leave()}>
          {t('sign-out', { name: me.name })}
        </button>
      )}
    </div>
  );
};

export const Frame = ({
  place,
  children,
}: {
  readonly place: Place;
  readonly children: ReactNode;
}): ReactNode => {
  const { t } = useSpeech();
  const { state } = useSession();
  const [open, setOpen] = useState(false);
  const [display, setDisplay] = useState(false);
  return (
    <>
      <a className="skip" href="#main">
        {t('skip')}
      </a>
      <header className="top">
        <div className="top-frame">
          <div className="top-bar">
            <Brand />
            <button
              type="button"
              className="button plain top-menu"
              aria-expanded={open}
              onClick={() => setOpen(!open)}
            >
              {t('menu')}
            </button>
          </div>
          <nav className={open ? 'top-nav open' : 'top-nav'} aria-label={t('menu')}>
            {state === 'signed-in' ? <NavLinks place={place} onGo={() => setOpen(false)} /> : <span />}
            <Settings display={display} onDisplay={() => setDisplay(!display)} />
          </nav>
        </div>
        {display && <DisplayPanel />}
        <Tape />
      </header>
      <UnsentNotice />
      {children}
    </>
  );
};
