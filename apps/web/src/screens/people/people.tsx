import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { newKey } from '../../api/key';
import { useSignedIn } from '../../session/session';
import { TableFrame } from '../../ui/table-frame';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { roleWord } from '../sign-in/roles';
import { PersonForm } from './person-form';

export type Person = AnswerOf<'people'>['people'][number];
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
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      {editing !== null && (
        <PersonForm
          key={editing === 'new' ? 'new' : editing.person}
          person={editing === 'new' ? null : editing}
          done={done}
          back={() => setEditing(null)}
        />
      )}
      <TableFrame name={t('people.list')}>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('people.name')}</th>
              <th scope="col">{t('people.roles')}</th>
              <th scope="col">{t('people.crew')}</th>
              <th scope="col">{t('people.stations')}</th>
              <th scope="col">{t('people.access')}</th>
            </tr>
          </thead>
          <tbody>
            {people.map((person) => (
              <PersonRow
                key={person.person}
                person={person}
                edit={() => setEditing(person)}
                renew={() => void renew(person)}
                leave={() => void leave(person)}
              />
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
};

type RowProps = {
  readonly person: Person;
  readonly edit: () => void;
  readonly renew: () => void;
  readonly leave: () => void;
};

const PersonRow = ({ person, edit, renew, leave }: RowProps): ReactNode => {
  const { t, say } = useSpeech();
  const { me, plant } = useSignedIn();
  const [leaving, setLeaving] = useState(false);
  const crew = plant.crews.find(({ id }) => id === person.crew);
  const stations = plant.stations.filter(({ id }) => person.stations.includes(id));
  return (
    <tr>
      <th scope="row">
        {person.name} <span className="quiet small mono">{person.person}</span>
      </th>
      <td>{person.roles.map((role) => roleWord(role, t)).join(', ')}</td>
      <td>{crew === undefined ? '–' : say(crew.name)}</td>
      <td>{stations.length === 0 ? '–' : stations.map(({ name }) => say(name)).join(', ')}</td>
      <td>
        <div className="row">
          <button type="button" className="button" onClick={edit}>
            {t('people.change')}
          </button>
          <button type="button" className="button" onClick={renew}>
            {t(person.signsIn ? 'people.new-pin' : 'people.give-pin')}
          </button>
          {person.person !== me.actor && !leaving && (
            <button type="button" className="button" onClick={() => setLeaving(true)}>
              {t('people.leaves')}
            </button>
          )}
          {leaving && (
            <>
              <button type="button" className="button primary" onClick={leave}>
                {t('people.leaves-sure', { name: person.name })}
              </button>
              <button type="button" className="button" onClick={() => setLeaving(false)}>
                {t('people.stays')}
              </button>
            </>
          )}
        </div>
      </td>
    </tr>
  );
};
