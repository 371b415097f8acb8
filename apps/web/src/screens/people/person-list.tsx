import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { useSpeech } from '../../words/words';
import { roleWord } from '../sign-in/roles';
import type { Person } from './person';

type Acts = {
  readonly edit: (person: Person) => void;
  readonly renew: (person: Person) => void;
  readonly invite: (person: Person) => void;
  readonly lost: (person: Person) => void;
  readonly leave: (person: Person) => void;
};

/** Whoever may sign in stands first; the others of the roster are one tap away. */
export const PersonList = ({ people, ...acts }: Acts & { readonly people: readonly Person[] }): ReactNode => {
  const { t } = useSpeech();
  const [search, setSearch] = useState('');
  const wanted = search.trim().toLocaleLowerCase();
  const found = people.filter(
    ({ name, person }) => name.toLocaleLowerCase().includes(wanted) || person.includes(wanted),
  );
  const letIn = found.filter(({ signsIn }) => signsIn);
  const others = found.filter(({ signsIn }) => !signsIn);
  return (
    <div className="stack">
      <label className="field people-search">
        <span className="field-name">{t('people.search')}</span>
        <input className="input" value={search} onChange={(event) => setSearch(event.target.value)} />
      </label>
      <ul className="access-list">
        {letIn.map((person) => (
          <PersonRow key={person.person} person={person} {...acts} />
        ))}
      </ul>
      {others.length > 0 && (
        <details open={wanted !== ''}>
          <summary className="others">{t('people.others', { count: others.length })}</summary>
          <ul className="access-list">
            {others.map((person) => (
              <PersonRow key={person.person} person={person} {...acts} />
            ))}
          </ul>
        </details>
      )}
    </div>
  );
};

const PersonRow = ({
  person,
  edit,
  renew,
  invite,
  lost,
  leave,
}: Acts & { readonly person: Person }): ReactNode => {
  const { t, say } = useSpeech();
  const { me, plant } = useSignedIn();
  const [leaving, setLeaving] = useState(false);
  const crew = plant.crews.find(({ id }) => id === person.crew);
  const stations = plant.stations.filter(({ id }) => person.stations.includes(id));
  const facts = [
    ...person.roles.map((role) => roleWord(role, t)),
    ...(crew === undefined ? [] : [say(crew.name)]),
    ...stations.map(({ name }) => say(name)),
  ];
  return (
    <li className="row spread">
      <span>
        <strong>{person.name}</strong> <span className="quiet small mono">{person.person}</span>
        <br />
        <span className="quiet">{facts.join(' · ')}</span>
      </span>
      {leaving ? (
        <div className="row">
          <button type="button" className="button primary" onClick={() => leave(person)}>
            {t('people.leaves-sure', { name: person.name })}
          </button>
          <button type="button" className="button" onClick={() => setLeaving(false)}>
            {t('people.stays')}
          </button>
        </div>
      ) : (
        <div className="row">
          <button type="button" className="button" onClick={() => edit(person)}>
            {t('people.change')}
          </button>
          <button type="button" className="button" onClick={() => renew(person)}>
            {t(person.signsIn ? 'people.new-pin' : 'people.give-pin')}
          </button>
          <button type="button" className="button" onClick={() => invite(person)}>
            {t('people.invite')}
          </button>
          <button type="button" className="button" onClick={() => lost(person)}>
            {t('people.factors-end')}
          </button>
          {person.person !== me.actor && (
            <button type="button" className="button" onClick={() => setLeaving(true)}>
              {t('people.leaves')}
            </button>
          )}
        </div>
      )}
    </li>
  );
};
