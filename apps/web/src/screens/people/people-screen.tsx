import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { useSpeech } from '../../words/words';
import { TroubleNotice } from '../../ui/trouble';
import { Accesses } from './accesses';
import { ErasePerson } from './erase-person';
import { People } from './people';
import { Sessions } from './sessions';
import { Tablets } from './tablets';
import { Tokens } from './tokens';
import './people.css';

const NOTHING = {};

/** Who works here, what lets them in, who is in now, and what the ledger of accesses says. */
export const PeopleScreen = (): ReactNode => {
  const { t } = useSpeech();
  const people = useQuestion('people', NOTHING);
  const letIn = people.answer?.people.filter(({ signsIn }) => signsIn).length;
  return (
    <main className="page stack people-screen" id="main">
      <div className="page-head">
        <div>
          <h1>{letIn === undefined ? t('nav.people') : t('people.title', { count: letIn })}</h1>
          <p>{t('people.says')}</p>
        </div>
      </div>
      {people.trouble !== null && <TroubleNotice trouble={people.trouble} again={people.again} />}
      {people.answer !== null && <People people={people.answer.people} changed={people.again} />}
      <Tablets />
      <ErasePerson changed={people.again} />
      <Sessions />
      <Tokens />
      <Accesses />
    </main>
  );
};
