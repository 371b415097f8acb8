import { useEffect, useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { Link, swapTo, useAddress } from '../../router/router';
import { Mark } from '../../ui/mark';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import '../../scan/scan.css';
import type { WordKey } from '../../words/words';

/** As many again with each tap on "more". */
const AT_A_TIME = 50;

const STAGES: Readonly<Record<string, WordKey>> = {
  ordered: 'stage.ordered',
  'on-line': 'stage.on-line',
  pulled: 'stage.pulled',
  shipped: 'stage.shipped',
};

export const FindHome = (): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const asked = useAddress().searchParams.get('search') ?? '';
  const [text, setText] = useState(asked);
  const [most, setMost] = useState(AT_A_TIME);
  useEffect(() => setMost(AT_A_TIME), [asked]);
  const { answer, trouble, again } = useQuestion('homes', { search: asked, most: String(most) });
  const count = answer?.homes.length ?? 0;
  const total = answer?.total ?? count;
  const find = (event: SyntheticEvent): void => {
    event.preventDefault();
    const search = text.trim();
    swapTo(search === '' ? places.homes : `${places.homes}?search=${encodeURIComponent(search)}`);
  };
  return (
    <div className="stack">
      <h1>{t('homes.title')}</h1>
      <form className="scan" onSubmit={find} role="search">
        <label className="field scan-field">
          <span className="field-name">{t('homes.search')}</span>
          <input
            className="input mono"
            value={text}
            autoComplete="off"
            spellCheck={false}
            onChange={(event) => setText(event.target.value)}
          />
        </label>
        <button type="submit" className="button primary scan-go">
          {t('homes.find')}
        </button>
      </form>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {answer !== null && <p role="status">{t('homes.found', { count, total, left: total - count })}</p>}
      <ul className="homes">
        {answer?.homes.map((home) => (
          <li key={home.home}>
            <Link className="home-link" to={places.home(home.home)}>
              <Serial of={home.home} />
              <span>{home.model}</span>
              <span className="quiet small">
                {STAGES[home.stage] === undefined ? home.stage : t(STAGES[home.stage] ?? 'stage.ordered')} ·{' '}
                {t('homes.last', { at: times.moment(home.lastAt) })}
              </span>
              {home.holds > 0 && (
                <span className="block-note small">
                  <Mark name="held" size={20} /> {t('homes.holds', { count: home.holds })}
                </span>
              )}
            </Link>
          </li>
        ))}
      </ul>
      {count < total && (
        <button type="button" className="button big" onClick={() => setMost(count + AT_A_TIME)}>
          {t('homes.more')}
        </button>
      )}
    </div>
  );
};
