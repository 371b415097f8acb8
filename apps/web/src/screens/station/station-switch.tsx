import type { ReactNode } from 'react';
import { places } from '../../router/places';
import { goTo } from '../../router/router';
import { settleAt, useSignedIn } from '../../session/session';
import { useSpeech } from '../../words/words';
import type { Station } from './cards';

/** The station's name is where it is changed. Whoever chooses one here means this device to stay there. */
export const StationSwitch = ({ station }: { readonly station: Station }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const choose = (id: string): void => {
    settleAt(id);
    goTo(places.station(id));
  };
  return (
    <select
      className="input station-switch"
      aria-label={t('station.choose')}
      value={station.id}
      onChange={(event) => choose(event.target.value)}
    >
      {plant.stations.map(({ id, pos, name }) => (
        <option key={id} value={id}>
          {pos === null ? say(name) : `${String(pos)} · ${say(name)}`}
        </option>
      ))}
    </select>
  );
};
