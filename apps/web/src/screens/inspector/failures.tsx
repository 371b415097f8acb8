import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { places } from '../../router/places';
import { Link } from '../../router/router';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { Mark } from '../../ui/mark';
import { useNow } from '../../ui/now';
import { Serial } from '../../ui/serial';
import { TroubleNotice } from '../../ui/trouble';
import { capital, named } from '../../words/named';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { Part } from './agency';

const Record = ({ again }: { readonly again: () => void }): ReactNode => {
  const { t, say, locale } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(again);
  const [serial, setSerial] = useState('');
  const [component, setComponent] = useState('');
  const [symptom, setSymptom] = useState('');
  const [note, setNote] = useState('');
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = {
      serial: serial.trim(),
      component,
      symptom,
      hold: true,
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    };
    if ((await telling.send('defect', body)) === undefined) return;
    setNote('');
    setSymptom('');
  };
  const listed = (list: typeof plant.components): readonly { id: string; says: string }[] =>
    list
      .map(({ id, name }) => ({ id, says: capital(say(name), locale) }))
      .sort((one, other) => one.says.localeCompare(other.says, locale));
  return (
    <form className="office-form no-print" onSubmit={(event) => void submit(event)}>
      <h3>{t('agency.record-failure')}</h3>
      <TextField name={t('holds.section')} value={serial} change={setSerial} mono />
      <ChoiceField
        name={t('agency.component')}
        value={component}
        change={setComponent}
        none={t('choose')}
        from={listed(plant.components)}
      />
      <ChoiceField
        name={t('agency.symptom')}
        value={symptom}
        change={setSymptom}
        none={t('choose')}
        from={listed(plant.symptoms)}
      />
      <TextField name={t('holds.note')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button
        type="submit"
        className="button primary"
        disabled={telling.busy || serial.trim() === '' || component === '' || symptom === ''}
      >
        {t('agency.record-it')}
      </button>
    </form>
  );
};

/** What is open in the plant, the agency's own findings first. */
export const Failures = ({ agency, again, isTheirs }: Part): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  const now = useNow();
  const failures = [...agency.failures].sort((one, other) => Number(other.agency) - Number(one.agency));
  return (
    <section className="stack" aria-labelledby="failures">
      <h2 id="failures">{t('agency.failures', { count: failures.length })}</h2>
      <div className="office-grid">
        <ul className="rows">
          {failures.map((one) => (
            <li key={`${one.serial} ${one.defect}`}>
              <Mark name={one.state === 'reworked' ? 'open-at-places' : 'refused'} size={28} />
              <div className="grow stack tight">
                <p>
                  <Link to={places.home(one.serial)}>
                    <Serial of={one.serial} />
                  </Link>{' '}
                  {say(one.says)}
                </p>
                <p className="quiet small">
                  {one.agency ? `${t('defects.by-agency')} · ` : ''}
                  {one.station === null ? '' : say(named(plant.stations, one.station))}
                  {one.state === 'reworked' ? ` · ${t('defect.reworked')}` : ''}
                </p>
              </div>
              <p className="age">{times.since(one.occurredAt, now)}</p>
            </li>
          ))}
        </ul>
        {isTheirs && <Record again={again} />}
      </div>
    </section>
  );
};
