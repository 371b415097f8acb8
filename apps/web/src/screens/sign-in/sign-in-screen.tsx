import type { AnswerOf } from '@libs/contracts';
import { lazy, useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { goTo, useAddress } from '../../router/router';
import { useSession } from '../../session/session';
import { TroubleNotice, TroubleSays } from '../../ui/trouble';
import { OfficeWords, useSpeech } from '../../words/words';
import { PinPad } from './pin-pad';
import { roleWord } from './roles';
import './sign-in.css';

const OtherWays = lazy(() => import('../other-ways/other-ways').then((m) => ({ default: m.OtherWays })));

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

  const [shown, setShown] = useState<string | null>(null);

  const enter = async (pin: string, code?: string): Promise<void> => {
    setSending(true);
    const result = await ask('signIn', {}, { body: { person: person.person, pin, code } });
    setSending(false);
    if (!result.ok) {
      setTrouble(result.trouble);
      setShown(asksForCode(result.trouble) ? pin : null);
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
      {shown !== null && <CodeEntry enter={(code) => void enter(shown, code)} busy={sending} />}
      <PinPad
        enter={(pin) => void enter(pin)}
        busy={sending}
        says={trouble !== null && <TroubleSays trouble={trouble} />}
      />
    </div>
  );
};

/** A code that was wrong is asked for once more; the PIN was right. */
const asksForCode = (trouble: Trouble): boolean =>
  trouble.kind === 'problem' && (trouble.code === 'code-needed' || trouble.code === 'code-wrong');

const CodeEntry = ({
  enter,
  busy,
}: {
  readonly enter: (code: string) => void;
  readonly busy: boolean;
}): ReactNode => {
  const { t } = useSpeech();
  const [code, setCode] = useState('');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    enter(code);
  };
  return (
    <form className="stack tight" onSubmit={submit}>
      <label className="field">
        <span className="field-name">{t('sign-in.code')}</span>
        <input
          className="input mono"
          autoComplete="one-time-code"
          value={code}
          autoFocus
          onChange={(event) => setCode(event.target.value)}
        />
      </label>
      <div>
        <button type="submit" className="button primary" disabled={busy || code.trim().length < 6}>
          {t('sign-in')}
        </button>
      </div>
    </form>
  );
};

/** Choose your name, then your PIN: no memory test beyond it, no typing on glass. */
export const SignInScreen = (): ReactNode => {
  const { t } = useSpeech();
  const question = useQuestion('signIns', NOTHING);
  const [person, setPerson] = useState<Person | null>(null);
  const [others, setOthers] = useState(false);
  if (others)
    return (
      <OfficeWords>
        <OtherWays back={() => setOthers(false)} />
      </OfficeWords>
    );
  return (
    <main className="page sign-in" id="main">
      <div className="page-head">
        <h1>{t(person === null ? 'sign-in.who' : 'sign-in.pin')}</h1>
      </div>
      {question.trouble !== null && <TroubleNotice trouble={question.trouble} again={question.again} />}
      {person === null ? (
        <>
          <People people={question.answer?.people ?? []} choose={setPerson} />
          <p>
            <button type="button" className="button" onClick={() => setOthers(true)}>
              {t('sign-in.other-ways')}
            </button>
          </p>
        </>
      ) : (
        <PinEntry person={person} back={() => setPerson(null)} />
      )}
    </main>
  );
};
