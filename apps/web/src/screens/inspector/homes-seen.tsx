import type { ReactNode } from 'react';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { Serial } from '../../ui/serial';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import type { Agency, Part } from './agency';

type Home = Agency['homes'][number];
type Section = Home['sections'][number];

/** One tap: seen where it stands now. */
const SeenHere = ({
  section,
  again,
}: {
  readonly section: Section;
  readonly again: () => void;
}): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(again);
  const { serial, station } = section;
  if (station === null || section.seen.includes(station)) return null;
  const name = say(named(plant.stations, station));
  return (
    <>
      <button
        type="button"
        className="button no-print"
        disabled={telling.busy}
        aria-label={t('agency.seen-here-of', { serial, station: name })}
        onClick={() => void telling.send('stageSeen', { serial, station })}
      >
        {t('agency.seen-here', { station: name })}
      </button>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </>
  );
};

const HomeRow = ({ home, again, isTheirs }: { readonly home: Home } & Omit<Part, 'agency'>): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  return home.sections.map((section) => (
    <tr key={section.serial}>
      <td>
        <Mark name={home.seen ? 'proven' : 'due'} size={20} />{' '}
        <span className="sr-only">{t(home.seen ? 'agency.home-seen' : 'agency.home-unseen')}</span>
        <Link to={places.home(section.serial)}>
          <Serial of={section.serial} />
        </Link>
      </td>
      <td>{section.station === null ? '' : say(named(plant.stations, section.station))}</td>
      <td>{section.seen.map((station) => say(named(plant.stations, station))).join(', ')}</td>
      <td>{isTheirs && <SeenHere section={section} again={again} />}</td>
    </tr>
  ));
};

/** Each home in at least one stage before its label (24 CFR 3282.362(c)(1)); the unseen come first. */
export const HomesSeen = ({ agency, again, isTheirs }: Part): ReactNode => {
  const { t } = useSpeech();
  const homes = [...agency.homes].sort((one, other) => Number(one.seen) - Number(other.seen));
  return (
    <section className="stack" aria-labelledby="homes-seen">
      <h2 id="homes-seen">{t('agency.homes')}</h2>
      <TableFrame name={t('agency.homes')} short>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('holds.section')}</th>
              <th scope="col">{t('agency.stands')}</th>
              <th scope="col">{t('agency.stages-seen')}</th>
              <th scope="col">
                <span className="sr-only">{t('agency.mark')}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {homes.map((home) => (
              <HomeRow key={home.home} home={home} again={again} isTheirs={isTheirs} />
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};
