import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { useLive } from '../../api/live';
import type { News } from '../../api/live';
import { useQuestion } from '../../api/use-question';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useSoon } from '../../ui/soon';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { LinePlan } from './line-plan';
import { LineTable } from './line-table';
import './line.css';

type Standing = AnswerOf<'line'>['sections'][number];
const EVERYTHING = {};
/** How this device likes to see the line; a reload keeps it. */
const TABLE_KEPT_AS = 'studbook.line-as-table';
/** As many as fit beside the title; the history has the rest. */
const NEWS_SHOWN = 4;

const Connected = ({ live }: { readonly live: boolean }): ReactNode => {
  const { t } = useSpeech();
  return (
    <p className={live ? 'live' : 'live lost'} role="status">
      <Mark name={live ? 'proven' : 'refused'} size={20} /> {t(live ? 'line.live' : 'line.not-live')}
    </p>
  );
};

const JustNow = ({ news }: { readonly news: readonly News[] }): ReactNode => {
  const { t, say } = useSpeech();
  const times = useTimes();
  if (news.length === 0) return null;
  return (
    <section className="just-now" aria-label={t('line.just-now')}>
      <h2>{t('line.just-now')}</h2>
      <ul aria-live="polite">
        {news.map((one) => (
          <li key={one.position} className="settle">
            <span className="mono quiet">{times.time(one.occurredAt)}</span>{' '}
            <span className="mono">{one.serial}</span> {say(one.says)}
          </li>
        ))}
      </ul>
    </section>
  );
};

const ViewChoice = ({
  table,
  choose,
}: {
  readonly table: boolean;
  readonly choose: (table: boolean) => void;
}): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="choices no-print" role="group" aria-label={t('line.view')}>
      {[false, true].map((value) => (
        <button
          key={String(value)}
          type="button"
          className="button"
          aria-pressed={table === value}
          onClick={() => choose(value)}
        >
          {t(value ? 'line.table' : 'line.plan')}
        </button>
      ))}
    </div>
  );
};

/** The line as it stands, live: every section where it is, how long, and what holds it. */
export const LineScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('line', EVERYTHING);
  const [news, setNews] = useState<readonly News[]>([]);
  const { plant } = useSignedIn();
  const [table, setTable] = useState(() => localStorage.getItem(TABLE_KEPT_AS) === 'yes');
  const choose = (asTable: boolean): void => {
    localStorage.setItem(TABLE_KEPT_AS, asTable ? 'yes' : 'no');
    setTable(asTable);
  };
  const soon = useSoon(again);
  const live = useLive((heard) => {
    if (heard?.serial) setNews((before) => [heard, ...before].slice(0, NEWS_SHOWN));
    soon();
  });
  const sections: readonly Standing[] = answer?.sections ?? [];
  const lineStations = new Set(plant.stations.filter(({ kind }) => kind === 'line').map(({ id }) => id));
  const onLine = sections.filter(
    ({ stage, station }) => stage === 'on-line' && lineStations.has(station ?? ''),
  );
  return (
    <main className="page line" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>
            {answer === null
              ? t('nav.line')
              : t('line.title', {
                  count: onLine.length,
                  held: onLine.filter(({ holds }) => holds > 0).length,
                })}
          </h1>
          <Connected live={live} />
        </div>
        <ViewChoice table={table} choose={choose} />
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <JustNow news={news} />
      {answer !== null && (table ? <LineTable sections={sections} /> : <LinePlan sections={sections} />)}
    </main>
  );
};
