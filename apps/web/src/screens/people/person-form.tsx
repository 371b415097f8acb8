import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { newKey } from '../../api/key';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { ProviderLink } from './provider-link';
import { roleWord } from '../sign-in/roles';
import type { Person } from './person';

/** What people may be; a program gets a token instead. The server has the last word. */
const ROLES = [
  'station-lead',
  'quality-manager',
  'inspector',
  'agency-inspector',
  'auditor',
  'administrator',
] as const;

type Props = {
  /** Null: somebody new. */
  readonly person: Person | null;
  readonly done: (name: string, pin: string | null) => void;
  readonly back: () => void;
};

type Draft = Pick<Person, 'name' | 'roles' | 'crew' | 'stations'>;
const SOMEBODY: Draft = { name: '', roles: ['station-lead'], crew: null, stations: [] };

const switched = (all: readonly string[], one: string): string[] =>
  all.includes(one) ? all.filter((other) => other !== one) : [...all, one];

const Switches = ({
  legend,
  choices,
  chosen,
  choose,
}: {
  readonly legend: string;
  readonly choices: readonly { readonly id: string; readonly says: string }[];
  readonly chosen: readonly string[];
  readonly choose: (next: string[]) => void;
}): ReactNode => (
  <fieldset className="field">
    <legend className="field-name">{legend}</legend>
    <div className="choices">
      {choices.map(({ id, says }) => (
        <button
          key={id}
          type="button"
          className="button"
          aria-pressed={chosen.includes(id)}
          onClick={() => choose(switched(chosen, id))}
        >
          {says}
        </button>
      ))}
    </div>
  </fieldset>
);

export const PersonForm = ({ person, done, back }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const [draft, setDraft] = useState<Draft>(person ?? SOMEBODY);
  const change = (part: Partial<Draft>): void => setDraft((before) => ({ ...before, ...part }));
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const [key] = useState(newKey);

  const send = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = {
      ...(person === null ? {} : { person: person.person }),
      name: draft.name.trim(),
      roles: draft.roles,
      crew: draft.crew,
      stations: draft.stations,
    };
    const result = await ask('person', {}, { body, key });
    if (result.ok) done(body.name, result.answer.pin);
    else setTrouble(result.trouble);
  };

  return (
    <form className="stack person-form" onSubmit={(event) => void send(event)}>
      <h3>{t(person === null ? 'people.add' : 'people.change')}</h3>
      <label className="field">
        <span className="field-name">{t('people.name')}</span>
        <input
          className="input"
          value={draft.name}
          maxLength={80}
          autoComplete="off"
          autoFocus
          onChange={(event) => change({ name: event.target.value })}
        />
      </label>
      <Switches
        legend={t('people.roles')}
        choices={ROLES.map((id) => ({ id, says: roleWord(id, t) }))}
        chosen={draft.roles}
        choose={(roles) => change({ roles })}
      />
      <label className="field">
        <span className="field-name">{t('people.crew')}</span>
        <select
          className="input"
          value={draft.crew ?? ''}
          onChange={(event) => change({ crew: event.target.value || null })}
        >
          <option value="">{t('people.no-crew')}</option>
          {plant.crews.map((one) => (
            <option key={one.id} value={one.id}>
              {say(one.name)}
            </option>
          ))}
        </select>
      </label>
      <Switches
        legend={t('people.stations')}
        choices={plant.stations.map(({ id, name: says }) => ({ id, says: say(says) }))}
        chosen={draft.stations}
        choose={(stations) => change({ stations })}
      />
      {person !== null && <ProviderLink person={person.person} />}
      {trouble !== null && <TroubleNotice trouble={trouble} />}
      <div className="row">
        <button
          type="submit"
          className="button primary"
          disabled={draft.name.trim() === '' || draft.roles.length === 0}
        >
          {t('people.enroll')}
        </button>
        <button type="button" className="button" onClick={back}>
          {t('back')}
        </button>
      </div>
    </form>
  );
};
