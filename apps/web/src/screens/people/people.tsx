import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { newKey } from '../../api/key';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { Invited } from './invited';
import type { Invitation } from './invited';
import type { Person } from './person';
import { PersonForm } from './person-form';
import { PersonList } from './person-list';

type Props = { readonly people: readonly Person[]; readonly changed: () => void };

/** A PIN is in clear once, here; whoever closes this has to give a new one. */
const NewPin = ({
  name,
  pin,
  close,
}: {
  readonly name: string;
  readonly pin: string;
  readonly close: () => void;
}): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="notice proven" role="status">
      <p className="grow">
        {t('people.pin', { name })} <strong className="mono new-pin">{pin}</strong>
        <br />
        {t('people.pin-once')}
      </p>
      <button type="button" className="button" onClick={close}>
        {t('people.pin-noted')}
      </button>
    </div>
  );
};

export const People = ({ people, changed }: Props): ReactNode => {
  const { t } = useSpeech();
  const [editing, setEditing] = useState<Person | 'new' | null>(null);
  const [given, setGiven] = useState<{ readonly name: string; readonly pin: string } | null>(null);
  const [invited, setInvited] = useState<Invitation | null>(null);
  const [ended, setEnded] = useState<string | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);

  const done = (name: string, pin: string | null): void => {
    setEditing(null);
    if (pin !== null) setGiven({ name, pin });
    changed();
  };
  const renew = async ({ person, name }: Person): Promise<void> => {
    const result = await ask('personPin', { person }, { body: {} });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) done(name, result.answer.pin);
  };
  const invite = async ({ person, name }: Person): Promise<void> => {
    const result = await ask('invitation', { person }, { body: {} });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) setInvited({ name, ...result.answer });
  };
  const lost = async ({ person, name }: Person): Promise<void> => {
    const result = await ask('factorsEnd', { person }, { body: {} });
    setTrouble(result.ok ? null : result.trouble);
    setEnded(result.ok ? name : null);
  };
  const leave = async ({ person }: Person): Promise<void> => {
    const result = await ask('leaving', { person }, { body: {}, key: newKey() });
    setTrouble(result.ok ? null : result.trouble);
    if (result.ok) changed();
  };

  return (
    <section className="stack" aria-labelledby="people-list">
      <div className="row spread">
        <h2 id="people-list">{t('people.list')}</h2>
        <button type="button" className="button primary" onClick={() => setEditing('new')}>
          {t('people.add')}
        </button>
      </div>
      {given !== null && <NewPin {...given} close={() => setGiven(null)} />}
      {invited !== null && <Invited {...invited} close={() => setInvited(null)} />}
      {ended !== null && (
        <p className="notice" role="status">
          {t('people.factors-ended', { name: ended })}
        </p>
      )}
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      {editing !== null && (
        <PersonForm
          key={editing === 'new' ? 'new' : editing.person}
          person={editing === 'new' ? null : editing}
          done={done}
          back={() => setEditing(null)}
        />
      )}
      <PersonList
        people={people}
        edit={setEditing}
        renew={(person) => void renew(person)}
        invite={(person) => void invite(person)}
        lost={(person) => void lost(person)}
        leave={(person) => void leave(person)}
      />
    </section>
  );
};
