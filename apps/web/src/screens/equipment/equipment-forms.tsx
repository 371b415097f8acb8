import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import { roleWord } from '../sign-in/roles';

type Props = { readonly again: () => void };

/** As it was found, before anything was adjusted: that is what says whether it measured right so far. */
export const Calibrate = ({ again }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(again);
  const [instrument, setInstrument] = useState('');
  const [kind, setKind] = useState('');
  const [dueOn, setDueOn] = useState('');
  const [found, setFound] = useState('');
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = {
      instrument: instrument.trim(),
      kind,
      dueOn: dueOn === '' ? null : dueOn,
      inTolerance: found === 'good',
    };
    if ((await telling.send('calibration', body)) !== undefined) setInstrument('');
  };
  return (
    <form className="office-form no-print" onSubmit={(event) => void submit(event)}>
      <h2>{t('equipment.calibrate')}</h2>
      <TextField name={t('equipment.number')} value={instrument} change={setInstrument} mono />
      <ChoiceField
        name={t('equipment.kind')}
        value={kind}
        change={setKind}
        none={t('choose')}
        from={(plant.instrumentKinds ?? []).map(({ id, name }) => ({ id, says: say(name) }))}
      />
      <ChoiceField
        name={t('equipment.as-found')}
        value={found}
        change={setFound}
        none={t('choose')}
        from={[
          { id: 'good', says: t('equipment.in-tolerance') },
          { id: 'bad', says: t('equipment.out') },
        ]}
      />
      <TextField name={t('equipment.due')} value={dueOn} change={setDueOn} type="date" />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button
        type="submit"
        className="button primary"
        disabled={telling.busy || instrument.trim() === '' || kind === '' || found === ''}
      >
        {t('equipment.record')}
      </button>
    </form>
  );
};

/** Roles that rules ask a signature of. */
const SIGN_AS = ['inspector', 'quality-manager'];

/** For an acting lead, or a badge with a last day. */
export const Qualify = ({ again }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(again);
  const [person, setPerson] = useState('');
  const [token, setToken] = useState('');
  const [until, setUntil] = useState('');
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = { person: person.trim(), token, until: until === '' ? null : until };
    if ((await telling.send('qualification', body)) !== undefined) setPerson('');
  };
  return (
    <form className="office-form no-print" onSubmit={(event) => void submit(event)}>
      <h2>{t('equipment.qualify')}</h2>
      <p className="quiet small">{t('equipment.qualify-hint')}</p>
      <TextField name={t('equipment.person')} value={person} change={setPerson} mono />
      <ChoiceField
        name={t('equipment.crew')}
        value={token}
        change={setToken}
        none={t('choose')}
        from={[
          ...plant.crews.map(({ id, name }) => ({ id: `crew:${id}`, says: say(name) })),
          ...SIGN_AS.map((role) => ({
            id: `role:${role}`,
            says: `${t('equipment.as-role')}: ${roleWord(role, t)}`,
          })),
        ]}
      />
      <TextField name={t('equipment.until')} value={until} change={setUntil} type="date" />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button
        type="submit"
        className="button primary"
        disabled={telling.busy || person.trim() === '' || token === ''}
      >
        {t('equipment.record')}
      </button>
    </form>
  );
};
