import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { useNames } from './use-names';

const NOTHING = {};

export const Sessions = (): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const nameOf = useNames();
  const { answer, trouble, again } = useQuestion('sessions', NOTHING);
  const [stuck, setStuck] = useState<Trouble | null>(null);
  const end = async (session: string): Promise<void> => {
    const result = await ask('sessionEnd', { session }, { body: {} });
    setStuck(result.ok ? null : result.trouble);
    if (result.ok) again();
  };
  const problem = stuck ?? trouble;
  return (
    <section className="stack" aria-labelledby="sessions">
      <h2 id="sessions">{t('people.sessions', { count: answer?.sessions.length ?? 0 })}</h2>
      {problem !== null && <TroubleNotice trouble={problem} again={again} />}
      <ul className="access-list">
        {answer?.sessions.map(({ id, actor, madeAt, seenAt }) => (
          <li key={id} className="row spread">
            <span>
              <strong>{nameOf(actor)}</strong>{' '}
              <span className="quiet">
                {t('people.session', { from: times.moment(madeAt), seen: times.moment(seenAt) })}
              </span>
            </span>
            <button type="button" className="button" onClick={() => void end(id)}>
              {t('people.end-session')}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
};
