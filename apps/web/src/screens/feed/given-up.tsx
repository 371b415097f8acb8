import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import { failureSays } from './failure';

type Letter = AnswerOf<'feed'>['letters'][number];
type Props = { readonly letters: readonly Letter[]; readonly changed: () => void };

const Row = ({ letter, changed }: { readonly letter: Letter; readonly changed: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { me } = useSignedIn();
  const times = useTimes();
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const act = async (route: 'feedSendAgain' | 'feedDrop'): Promise<void> => {
    const result = await ask(route, { letter: letter.id }, { body: {} });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) changed();
  };
  return (
    <li className="stack tight">
      <p>
        <span className="mono">{letter.subject}</span> {say(letter.says)}
      </p>
      <p className="quiet small">
        <span className="mono">{letter.target}</span> · {failureSays(letter.why, t)}{' '}
        {t('feed.tries', { count: letter.tries, at: times.moment(letter.at) })}
      </p>
      {me.roles.includes('administrator') && (
        <div className="choices">
          <button type="button" className="button" onClick={() => void act('feedSendAgain')}>
            {t('feed.send-again')}
          </button>
          <button type="button" className="button" onClick={() => void act('feedDrop')}>
            {t('feed.drop')}
          </button>
        </div>
      )}
      {trouble !== null && <TroubleNotice trouble={trouble} />}
    </li>
  );
};

/** What nobody took. It stands here until it is sent again or taken off. */
export const GivenUp = ({ letters, changed }: Props): ReactNode => {
  const { t } = useSpeech();
  if (letters.length === 0) return null;
  return (
    <section className="stack" aria-labelledby="given-up">
      <h2 id="given-up">{t('feed.given-up', { count: letters.length })}</h2>
      <ul className="access-list">
        {letters.map((letter) => (
          <Row key={letter.id} letter={letter} changed={changed} />
        ))}
      </ul>
    </section>
  );
};
