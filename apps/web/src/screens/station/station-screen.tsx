import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { useDisplay } from '../../look/display';
import { places } from '../../router/places';
import { Link, goTo } from '../../router/router';
import { ScanField } from '../../scan/scan-field';
import { useWedge } from '../../scan/wedge';
import { useSignedIn } from '../../session/session';
import { signal } from '../../ui/signals';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import type { Station } from './cards';
import { takenByForm } from './scan-target';
import { SectionWork } from './section-work';
import { StandingHere } from './standing-here';
import { StationSwitch } from './station-switch';
import { useKit } from './use-kit';
import { UnknownSerial } from './unknown-serial';
import './station.css';

type Props = { readonly station: string; readonly serial: string | null };

const NOTHING_ELSE = {};

const StationHead = ({
  station,
  open,
  serial,
}: {
  readonly station: Station;
  readonly open: (serial: string) => void;
  readonly serial: string | null;
}): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="station-head">
      <p className="station-name">
        <StationSwitch station={station} />
        {serial !== null && (
          <Link className="button plain" to={places.station(station.id)}>
            {t('station.another')}
          </Link>
        )}
      </p>
      {serial === null && (
        <>
          <h1>{t('scan.title')}</h1>
          <ScanField found={open} />
        </>
      )}
    </div>
  );
};

const Section = ({
  station,
  serial,
  onLine,
}: {
  readonly station: Station;
  readonly serial: string;
  readonly onLine: readonly string[];
}): ReactNode => {
  const { answer, trouble, again } = useQuestion('section', { serial, at: station.id });
  const soon = useSoon(again);
  useLive((news) => {
    if (news === null || news.serial === serial || news.serial === answer?.home) soon();
  });
  if (trouble?.kind === 'problem' && trouble.status === 404)
    return <UnknownSerial typed={serial} station={station.id} onLine={onLine} />;
  return (
    <>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && (
        <SectionWork key={answer.serial} section={answer} station={station} renew={again} />
      )}
    </>
  );
};

/** The tablet at a station: scan, see what is due and what blocks it, ask, tell. */
const AtStation = ({
  station,
  serial,
}: {
  readonly station: Station;
  readonly serial: string | null;
}): ReactNode => {
  const { sound } = useDisplay();
  useKit(station.id);
  const line = useQuestion('line', NOTHING_ELSE);
  const soon = useSoon(line.again);
  useLive((news) => {
    if (serial === null || news?.type.startsWith('Section') === true) soon();
  });
  const onLine = line.answer?.sections.map((section) => section.serial) ?? [];
  const open = (found: string): void => goTo(places.sectionAt(station.id, found));
  useWedge((text) => {
    if (onLine.includes(text) || !takenByForm(text)) open(text);
    // After what it is for: making a sound takes a slow tablet longer than turning the page.
    setTimeout(() => signal('heard', sound));
  });
  return (
    <main className="page station" id="main">
      <StationHead station={station} serial={serial} open={open} />
      {line.trouble !== null && serial === null && (
        <TroubleNotice trouble={line.trouble} again={line.again} />
      )}
      {serial === null ? (
        <StandingHere station={station} sections={line.answer?.sections ?? []} />
      ) : (
        <Section station={station} serial={serial} onLine={onLine} />
      )}
    </main>
  );
};

export const StationScreen = ({ station, serial }: Props): ReactNode => {
  const { t } = useSpeech();
  const { plant } = useSignedIn();
  const known = plant.stations.find(({ id }) => id === station);
  if (known === undefined)
    return (
      <main className="page" id="main">
        <h1>{t('station.unknown', { station })}</h1>
        <Link to={places.start}>{t('nav.start')}</Link>
      </main>
    );
  return <AtStation station={known} serial={serial} />;
};
