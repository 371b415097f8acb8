import { useState } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { GivenUp } from './given-up';
import { Subscribe } from './subscribe';
import { Subscriptions } from './subscriptions';
import '../people/people.css';
import '../release/release.css';

const EVERYTHING = {};

/** The secret is in sight once: whoever goes on without it makes another subscription. */
const Secret = ({ secret }: { readonly secret: string }): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="notice proven" role="status">
      <p className="grow">
        {t('feed.secret-once')} <code className="token">{secret}</code>
      </p>
    </div>
  );
};

/** Who is sent the plant's news, how it goes, and what could not be delivered. */
export const FeedScreen = (): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const { answer, trouble, again } = useQuestion('feed', EVERYTHING);
  const [secret, setSecret] = useState<string | null>(null);
  const failing = answer?.subscriptions.filter(
    ({ standing }) => standing === 'failing' || standing === 'gone',
  );
  return (
    <main className="page stack people-screen" id="main" aria-busy={answer === null}>
      <div className="page-head">
        <div>
          <h1>
            {answer === null
              ? t('nav.feed')
              : t('feed.title', { count: answer.subscriptions.length, failing: failing?.length ?? 0 })}
          </h1>
          <p>{t('feed.says')}</p>
        </div>
      </div>
      {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
      {secret !== null && <Secret secret={secret} />}
      {answer !== null && (
        <>
          <Subscriptions subscriptions={answer.subscriptions} changed={again} />
          <GivenUp letters={answer.letters} changed={again} />
          <Subscribe
            hasMail={answer.hasMail}
            all={me.roles.includes('administrator')}
            made={(shown) => {
              setSecret(shown);
              again();
            }}
          />
        </>
      )}
    </main>
  );
};
