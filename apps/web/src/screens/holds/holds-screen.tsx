import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { mayDecide, useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { Serial } from '../../ui/serial';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import '../release/release.css';

type Hold = AnswerOf<'holds'>['holds'][number];
const EVERYTHING = {};
const OF_WORDS: Readonly<Record<Hold['of'], WordKey>> = {
  section: 'holds.section',
  home: 'holds.home',
  station: 'holds.station',
  lot: 'holds.lot',
  instrument: 'holds.instrument',
};

const Subject = ({ hold }: { readonly hold: Hold }): ReactNode => {
  const { say } = useSpeech();
  const { plant } = useSignedIn();
  if (hold.of === 'station') return <strong>{say(named(plant.stations, hold.subject))}</strong>;
  if (hold.of === 'lot' || hold.of === 'instrument') return <span className="mono">{hold.subject}</span>;
  return (
    <Link
      to={hold.station === null ? places.home(hold.subject) : places.sectionAt(hold.station, hold.subject)}
    >
      <Serial of={hold.subject} />
    </Link>
  );
};

/** Released where the rules leave it to a person; the red tag only by the agency, on its own screen. */
const Release = ({ hold, again }: { readonly hold: Hold; readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const telling = useTell(again);
  if (!mayDecide(me) || hold.goesBy !== 'decision' || hold.of === 'lot' || hold.of === 'instrument')
    return null;
  const release = async (): Promise<void> => {
    const wanted = { hold: hold.hold };
    await (hold.of === 'station'
      ? telling.send('stationRelease', { station: hold.subject }, wanted)
      : telling.send('release', { serial: hold.subject }, wanted));
  };
  return (
    <>
      <button
        type="button"
        className="button no-print"
        disabled={telling.busy}
        onClick={() => void release()}
      >
        {t('hold.release')}
      </button>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </>
  );
};

const HoldRow = ({ hold, again }: { readonly hold: Hold; readonly again: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  const now = useNow();
  const isSection = hold.of === 'section' || hold.of === 'home';
  return (
    <li>
      <Mark name={hold.redTag === null ? 'held' : 'red-tag'} size={28} />
      <div className="grow stack tight">
        <p>
          <span className="tag">{t(OF_WORDS[hold.of])}</span> <Subject hold={hold} />
          {isSection && hold.station !== null && (
            <span className="quiet"> · {say(named(plant.stations, hold.station))}</span>
          )}
        </p>
        <p>{hold.redTag === null ? say(hold.says) : t('holds.red-tag', { tag: hold.redTag })}</p>
      </div>
      <p className="age">{hold.since === null ? '' : times.since(hold.since, now)}</p>
      {isSection && (
        <Link className="button plain no-print" to={places.tag(hold.subject, hold.hold)}>
          {t('holds.print')}
        </Link>
      )}
      <Release hold={hold} again={again} />
    </li>
  );
};

const HoldStation = ({ again }: { readonly again: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(again);
  const [station, setStation] = useState('');
  const [reason, setReason] = useState('');
  const [note, setNote] = useState('');
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = { station, reason, ...(note.trim() === '' ? {} : { note: note.trim() }) };
    if ((await telling.send('stationHold', body)) === undefined) return;
    setStation('');
    setNote('');
  };
  const reasons = (plant.reasons ?? []).filter((one) => one.for.includes('hold'));
  return (
    <form className="office-form no-print" onSubmit={(event) => void submit(event)}>
      <h2>{t('holds.hold-station')}</h2>
      <p className="quiet">{t('holds.hold-station-says')}</p>
      <ChoiceField
        name={t('holds.station')}
        value={station}
        change={setStation}
        none={t('choose')}
        from={plant.stations.map(({ id, name }) => ({ id, says: say(name) }))}
      />
      <ChoiceField
        name={t('holds.reason')}
        value={reason}
        change={setReason}
        none={t('choose')}
        from={reasons.map(({ id, name }) => ({ id, says: say(name) }))}
      />
      <TextField name={t('holds.note')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button
        type="submit"
        className="button primary"
        disabled={telling.busy || station === '' || reason === ''}
      >
        {t('holds.hold-it')}
      </button>
    </form>
  );
};

/** Everything that is held, the oldest first: how long, why, and how it goes. */
export const HoldsScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('holds', EVERYTHING);
  const [which, setWhich] = useState<Hold['of'] | 'all'>('all');
  const soon = useSoon(again);
  useLive(soon);
  const inPlant = (answer?.holds ?? []).filter(({ stage }) => stage !== 'shipped');
  const gone = (answer?.holds.length ?? 0) - inPlant.length;
  const shown = inPlant.filter((hold) => which === 'all' || hold.of === which);
  const kinds = [...new Set(inPlant.map((hold) => hold.of))];
  return (
    <main className="page" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>{answer === null ? t('nav.holds') : t('holds.title', { count: inPlant.length })}</h1>
          {gone > 0 && <p>{t('holds.left', { count: gone })}</p>}
        </div>
        {kinds.length > 1 && (
          <div className="choices no-print" role="group" aria-label={t('holds.which')}>
            {(['all', ...kinds] as const).map((kind) => (
              <button
                key={kind}
                type="button"
                className="button"
                aria-pressed={which === kind}
                onClick={() => setWhich(kind)}
              >
                {t(kind === 'all' ? 'holds.all' : OF_WORDS[kind])}
              </button>
            ))}
          </div>
        )}
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <div className="office-grid">
        <ul className="rows">
          {shown.map((hold) => (
            <HoldRow key={`${hold.of} ${hold.subject} ${hold.hold}`} hold={hold} again={again} />
          ))}
        </ul>
        <HoldStation again={again} />
      </div>
    </main>
  );
};
