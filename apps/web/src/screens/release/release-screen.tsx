import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useLive } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { FindingList } from '../../ui/finding-list';
import { TextField } from '../../ui/field';
import { Mark } from '../../ui/mark';
import { Serial } from '../../ui/serial';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { DataPlate } from './data-plate';
import { LabelLog } from './label-log';
import './release.css';

type Near = AnswerOf<'releases'>['sections'][number];
type Release = AnswerOf<'sectionRelease'>;
const EVERYTHING = {};
/** Three letters and six digits, as the label is stamped (24 CFR 3280.11(b)). */
const LABEL = /^[A-Z]{3} ?\d{3} ?\d{3}$/;

export const ReleaseScreen = ({ serial }: { readonly serial: string | null }): ReactNode =>
  serial === null ? <ReleaseList /> : <OneRelease serial={serial} />;

const NearRow = ({ section }: { readonly section: Near }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const { label, missing, redTag, station } = section;
  const mark = label !== null || missing === 0 ? 'proven' : redTag ? 'red-tag' : 'due';
  return (
    <li>
      <Mark name={mark} size={28} />
      <div className="grow">
        <Link to={places.releaseOf(section.serial)}>
          <Serial of={section.serial} />
        </Link>{' '}
        <span className="quiet">{say(named(plant.stations, station ?? ''))}</span>
      </div>
      <p>
        {label === null ? t('release.missing', { count: missing }) : t('release.labelled', { number: label })}
      </p>
    </li>
  );
};

const ReleaseList = (): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('releases', EVERYTHING);
  const soon = useSoon(again);
  useLive(soon);
  const waiting = (answer?.sections ?? []).filter(({ label }) => label === null);
  const labelled = (answer?.sections ?? []).filter(({ label }) => label !== null);
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <h1>
          {answer === null
            ? t('nav.release')
            : t('release.title', {
                count: waiting.length,
                ready: waiting.filter(({ missing }) => missing === 0).length,
              })}
        </h1>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <ul className="rows">
        {[...waiting, ...labelled].map((section) => (
          <NearRow key={section.serial} section={section} />
        ))}
      </ul>
      <LabelLog />
    </main>
  );
};

const Affix = ({ release, again }: { readonly release: Release; readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const [number, setNumber] = useState(release.nextLabel ?? '');
  const stamped = number.trim().toUpperCase();
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('label', { serial: release.serial, number: stamped });
  };
  return (
    <form className="office-form no-print" onSubmit={submit}>
      <TextField name={t('release.number')} value={number} change={setNumber} mono hint={t('release.form')} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button
        type="submit"
        className="button primary big"
        disabled={telling.busy || !release.ready || !LABEL.test(stamped)}
      >
        {t('release.affix')}
      </button>
    </form>
  );
};

const Answer = ({ release }: { readonly release: Release }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const { label, labelledAt, missing } = release;
  if (label !== null) {
    return (
      <div className="notice proven">
        <Mark name="proven" size={32} />
        <p>
          {t('release.is-labelled', {
            number: label,
            day: labelledAt === null ? '' : times.day(labelledAt),
          })}
        </p>
      </div>
    );
  }
  return release.ready ? (
    <div className="notice proven">
      <Mark name="proven" size={32} />
      <p>{t('release.nothing-missing')}</p>
    </div>
  ) : (
    <div className="notice refused">
      <Mark name="refused" size={32} />
      <p>{t('release.not-yet', { count: missing.length })}</p>
    </div>
  );
};

/** One section: may its label go on, and if not, exactly what is missing. */
const OneRelease = ({ serial }: { readonly serial: string }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const { answer, trouble, again } = useQuestion('sectionRelease', { serial });
  const soon = useSoon(again);
  useLive(soon);
  const seen = (answer?.agencySaw ?? []).map((station) => say(named(plant.stations, station)));
  return (
    <main className="page stack" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>
            {t('release.of')} <Serial of={serial} />
          </h1>
          {answer !== null && (
            <p>
              <Link to={places.home(answer.home)}>{answer.model}</Link>
              {' · '}
              {seen.length === 0 ? t('release.unseen') : t('release.seen', { stations: seen.join(', ') })}
            </p>
          )}
        </div>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && (
        <div className="office-grid">
          <div className="stack">
            <Answer release={answer} />
            <FindingList findings={answer.missing} />
            {answer.label === null && answer.station !== null && (
              <p>
                <Link to={places.sectionAt(answer.station, serial)}>{t('release.go-there')}</Link>
              </p>
            )}
            <p className="governing">{say(plant.governing)}</p>
          </div>
          <div className="stack">
            {answer.label === null && <Affix key={answer.nextLabel} release={answer} again={again} />}
            <DataPlate home={answer.home} />
          </div>
        </div>
      )}
    </main>
  );
};
