import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import { Link, goTo } from '../../router/router';
import { places } from '../../router/places';
import { screensFor } from '../../router/screens';
import { ScanField } from '../../scan/scan-field';
import { useWedge } from '../../scan/wedge';
import { homeStation, settleAt, useSignedIn } from '../../session/session';
import { useSpeech } from '../../words/words';
import './start.css';

const Stations = (): ReactNode => {
  const { t, say } = useSpeech();
  const { plant, me } = useSignedIn();
  const [all, setAll] = useState(false);
  const own = plant.stations.filter(({ id }) => me.stations.includes(id) || id === homeStation());
  const shown = all || own.length === 0 ? plant.stations : own;
  if (plant.stations.length === 0) return <p className="notice due">{t('start.no-rulebook')}</p>;
  return (
    <section className="stack" aria-labelledby="stations">
      <h2 id="stations">{t('start.stations')}</h2>
      <ul className="stations">
        {shown.map((station) => (
          <li key={station.id}>
            <Link
              className="station-link"
              to={places.station(station.id)}
              onClick={() => settleAt(station.id)}
            >
              <span className="station-number mono" aria-hidden="true">
                {station.pos ?? '·'}
              </span>
              {say(station.name)}
            </Link>
          </li>
        ))}
      </ul>
      {shown.length < plant.stations.length && (
        <div>
          <button type="button" className="button" onClick={() => setAll(true)}>
            {t('start.all-stations')}
          </button>
        </div>
      )}
    </section>
  );
};

const Screens = (): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  return (
    <nav aria-label={t('start.screens')}>
      <ul className="entries">
        {screensFor(me.roles).map((entry) => (
          <li key={entry.to}>
            <Link to={entry.to} className="entry">
              <strong>{t(entry.title)}</strong>
              <span>{t(entry.says)}</span>
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
};

/** Whoever works at stations finds them first; to the others the screens matter more. */
const WORKS_AT_STATIONS = ['station-lead', 'inspector', 'installer'];

export const StartScreen = (): ReactNode => {
  const { t, say } = useSpeech();
  const { me, plant } = useSignedIn();
  const open = async (serial: string): Promise<void> => {
    const found = await ask('section', { serial });
    const station = (found.ok ? found.answer.at : null) ?? homeStation() ?? me.stations[0];
    goTo(station === undefined ? places.home(serial) : places.sectionAt(station, serial));
  };
  useWedge((serial) => void open(serial));
  const atStations = me.roles.some((role) => WORKS_AT_STATIONS.includes(role));
  const stations = <Stations key="stations" />;
  const screens = <Screens key="screens" />;
  return (
    <main className="page start" id="main">
      <div className="page-head">
        <div>
          <h1>{t('start.hello', { name: me.name })}</h1>
          <p>{t(plant.demonstration ? 'start.plant-demonstration' : 'start.plant', { plant: plant.name })}</p>
        </div>
      </div>
      <div className="start-body">
        <ScanField found={(serial) => void open(serial)} />
        {atStations ? [stations, screens] : [screens, stations]}
      </div>
      <p className="governing">{say(plant.governing)}</p>
    </main>
  );
};
