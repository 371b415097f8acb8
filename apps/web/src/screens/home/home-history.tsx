import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { usePrintFoot } from '../../look/print-foot';
import { useQuestion } from '../../api/use-question';
import { isQualityManager, useSignedIn } from '../../session/session';
import { RoleTag } from '../../ui/role-tag';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSpeech } from '../../words/words';
import { FILTERS, keptBy } from './entries';
import type { Entry, Filter } from './entries';
import { HistoryDay } from './history-day';
import { LinksPanel } from './links-panel';
import { useDays } from './use-days';
import { useLabels } from './use-labels';

type History = AnswerOf<'history'>;
type Shown = { readonly filter: Filter; readonly serial: string | null };

const WORDS = {
  all: 'history.all',
  findings: 'history.findings',
  corrections: 'history.corrections',
  refusals: 'history.refusals',
  defects: 'history.defects',
  moves: 'history.moves',
} as const;

const Filters = ({
  history,
  shown,
  show,
}: {
  readonly history: History;
  readonly shown: Shown;
  readonly show: (shown: Shown) => void;
}): ReactNode => {
  const { t } = useSpeech();
  const serials = [null, ...history.sections.map(({ serial }) => serial)];
  return (
    <div className="filters no-print">
      <fieldset>
        <legend className="sr-only">{t('history.show')}</legend>
        <div className="choices">
          {FILTERS.map((filter) => (
            <button
              key={filter}
              type="button"
              className="button"
              aria-pressed={shown.filter === filter}
              onClick={() => show({ ...shown, filter })}
            >
              {t(WORDS[filter])}{' '}
              <span className="small mono">{keptBy(filter, shown.serial, history.entries).length}</span>
            </button>
          ))}
        </div>
      </fieldset>
      {serials.length > 2 && (
        <fieldset>
          <legend className="sr-only">{t('history.section')}</legend>
          <div className="choices">
            {serials.map((serial) => (
              <button
                key={serial ?? 'both'}
                type="button"
                className="button"
                aria-pressed={shown.serial === serial}
                onClick={() => show({ ...shown, serial })}
              >
                {serial === null ? t('history.both') : <Serial of={serial} />}
              </button>
            ))}
          </div>
        </fieldset>
      )}
    </div>
  );
};

const Head = ({ history }: { readonly history: History }): ReactNode => {
  const { t } = useSpeech();
  const count = (kept: (entry: Entry) => boolean): number => history.entries.filter(kept).length;
  return (
    <div className="page-head">
      <div>
        <h1>
          {t('history.title', { home: history.home })} <span className="quiet">{history.model}</span>
        </h1>
        <p>
          {t('history.sum', {
            count: history.entries.length,
            late: count(({ late }) => late),
            corrections: count(({ correctedBy }) => correctedBy.length > 0),
          })}
        </p>
        <ul className="row history-sections">
          {history.sections.map(({ serial, role, label }) => (
            <li key={serial} className="row">
              <Serial of={serial} />
              <RoleTag role={role} />
              {label !== null && (
                <span className="tag">
                  {t('head.label')} <span className="mono">{label}</span>
                </span>
              )}
              <Link className="no-print" to={places.traveler(serial)}>
                {t('nav.traveler')}
              </Link>
              <Link className="no-print" to={places.paperLabel('serial', serial)}>
                {t('nav.labels')}
              </Link>
            </li>
          ))}
        </ul>
      </div>
      <button type="button" className="button no-print" onClick={() => window.print()}>
        {t('history.print')}
      </button>
    </div>
  );
};

const Entries = ({ history }: { readonly history: History }): ReactNode => {
  const { t, say } = useSpeech();
  const { me, plant } = useSignedIn();
  const [shown, show] = useState<Shown>({ filter: 'all', serial: null });
  usePrintFoot(t('history.foot', { home: history.home, position: history.position }));
  const days = useDays(keptBy(shown.filter, shown.serial, history.entries));
  const byPosition = new Map(history.entries.map((entry) => [entry.position, entry]));
  const labels = useLabels(history.sections[0]?.serial ?? null);
  return (
    <>
      <Head history={history} />
      {isQualityManager(me) && <LinksPanel home={history.home} />}
      <Filters history={history} shown={shown} show={show} />
      {days.length === 0 && <p className="notice">{t('history.nothing')}</p>}
      {days.map(({ day, entries }) => (
        <HistoryDay
          key={day}
          day={day}
          entries={entries}
          several={history.sections.length > 1}
          byPosition={byPosition}
          labels={labels}
        />
      ))}
      <p className="governing">{say(plant.governing)}</p>
    </>
  );
};

/** One home from order to site: every event in the order it happened, nothing taken out. */
export const HomeHistory = ({ serial }: { readonly serial: string }): ReactNode => {
  const { answer, trouble, again } = useQuestion('history', { serial });
  return (
    <div aria-busy={answer === null && trouble === null}>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && <Entries history={answer} />}
    </div>
  );
};
