import type { ReactNode } from 'react';
import { useState } from 'react';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { Sample } from './sample';
import { TakePackets } from './take-packets';
import './audit.css';

/** For whoever only reads: find a home, take its packet, draw a sample and take all of theirs. */
export const AuditScreen = (): ReactNode => {
  const { t } = useSpeech();
  return (
    <main className="page stack audit" id="main">
      <div className="page-head">
        <div>
          <h1>{t('audit.title')}</h1>
          <p>{t('audit.says')}</p>
        </div>
      </div>
      <Sample />
      <FindOne />
    </main>
  );
};

const FindOne = (): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const [search, setSearch] = useState('');
  const { answer, trouble, again } = useQuestion('homes', { search: search.trim() });
  return (
    <section className="stack" aria-labelledby="one-home">
      <h2 id="one-home">{t('audit.one')}</h2>
      <label className="field audit-search">
        <span className="field-name">{t('audit.search')}</span>
        <input
          className="input mono"
          value={search}
          autoComplete="off"
          spellCheck={false}
          onChange={(event) => setSearch(event.target.value)}
        />
      </label>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      <ul className="audit-homes">
        {answer?.homes.slice(0, SHOWN).map((home) => (
          <li key={home.home} className="row spread">
            <span className="row">
              <Link to={places.home(home.home)} className="audit-home">
                <Serial of={home.home} />
              </Link>
              <span>{home.model}</span>
              <span className="quiet small">{times.day(home.lastAt)}</span>
            </span>
            <TakePackets homes={[home.home]} name={home.home} />
          </li>
        ))}
      </ul>
      {answer !== null && answer.homes.length > SHOWN && <p className="quiet">{t('audit.more')}</p>}
    </section>
  );
};
/** Enough to see that the search found the right one. */
const SHOWN = 12;
