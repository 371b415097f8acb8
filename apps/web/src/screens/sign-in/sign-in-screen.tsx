import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { goTo, useAddress } from '../../router/router';
import { useSession } from '../../session/session';
import { TroubleNotice, TroubleSays } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { PinPad } from './pin-pad';
import { roleWord } from './roles';
import './sign-in.css';

type Person = AnswerOf<'signIns'>['people'][number];

const NOTHING = {};

const People = ({
  people,
  choose,
}: {
  readonly people: readonly Person[];
  readonly choose: (person: Person) => void;
}): ReactNode => {
  const { t } = useSpeech();
  return (
    <ul className="people">
      {people.map((person) => (
        <li key={person.person}>
          <button type="button" className="person" onClick={() => choose(person)}>
            <span className="person-name">{person.name}</span>
            <span className="person-roles">{person.roles.map((role) => roleWord(role, t)).join(', ')}</span>
          </button>
        </li>
      ))}
    </ul>
  );
};

const PinEntry = ({ person, back }: { readonly person: Person; readonly back: () => void }): ReactNode => {
  const { t } = useSpeech();
  const { renew } = useSession();
  const address = useAddress();
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [sending, setSending] = useState(false);

  const enter = async (pin: string): Promise<void> => {
    setSending(true);
    const result = await ask('signIn', {}, { body: { person: person.person, pin } });
    setSending(false);
    if (!result.ok) {
      setTrouble(result.trouble);
      return;
    }
    await renew();
    if (address.pathname === places.signIn) goTo(places.start);
  };
  return (
    <div className="pin stack">
      <div className="row spread">
        <h2>{person.name}</h2>
        <button type="button" className="button" onClick={back}>
          {t('sign-in.someone-else')}
        </button>
      </div>
      {person.pin !== null && (
        <p className="notice">
          <span>
            {t('sign-in.demonstration-pin')} <strong className="mono">{person.pin}</strong>
          </span>
        </p>
      )}
      <PinPad
        enter={(pin) => void enter(pin)}
        busy={sending}
        says={trouble !== null && <TroubleSays trouble={trouble} />}
      />
    </div>
  );
};

/** Choose your name, then your PIN: no memory test beyond it, no typing on glass. */
export const SignInScreen = (): ReactNode => {
  const { t } = useSpeech();
  const question = useQuestion('signIns', NOTHING);
  const [person, setPerson] = useState<Person | null>(null);
  return (
    <main className="page sign-in" id="main">
      <div className="page-head">
        <h1>{t(person === null ? 'sign-in.who' : 'sign-in.pin')}</h1>
      </div>
      {question.trouble !== null && <TroubleNotice trouble={question.trouble} again={question.again} />}
      {person === null ? (
        <People people={question.answer?.people ?? []} choose={setPerson} />
      ) : (
        <PinEntry person={person} back={() => setPerson(null)} />
      )}
    </main>
  );
};
