import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { useSignedIn } from '../../session/session';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';
import type { Part } from './agency';

const VISITS_SHOWN = 6;

const Check = ({
  name,
  on,
  change,
}: {
  readonly name: string;
  readonly on: boolean;
  readonly change: (on: boolean) => void;
}): ReactNode => (
  <label className="check">
    <input type="checkbox" checked={on} onChange={(event) => change(event.target.checked)} />
    {name}
  </label>
);

const Record = ({ today, again }: { readonly today: string; readonly again: () => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const telling = useTell(again);
  const line = plant.stations.filter(({ kind }) => kind === 'line' || kind === 'shop');
  const [day, setDay] = useState(today);
  const [seen, setSeen] = useState<ReadonlySet<string>>(new Set(line.map(({ id }) => id)));
  const [storage, setStorage] = useState(false);
  const [equipment, setEquipment] = useState(false);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('visit', { day, stations: [...seen], storage, equipment });
  };
  const toggle = (id: string, on: boolean): void =>
    setSeen((before) => new Set(on ? [...before, id] : [...before].filter((one) => one !== id)));
  return (
    <form className="office-form no-print" onSubmit={submit}>
      <h3>{t('agency.record-visit')}</h3>
      <TextField name={t('agency.day')} value={day} change={setDay} type="date" />
      <fieldset>
        <legend className="field-name">{t('agency.looked-at')}</legend>
        <div className="row">
          {line.map(({ id, name }) => (
            <Check key={id} name={say(name)} on={seen.has(id)} change={(on) => toggle(id, on)} />
          ))}
          <Check name={t('agency.about-storage')} on={storage} change={setStorage} />
          <Check name={t('agency.equipment')} on={equipment} change={setEquipment} />
        </div>
      </fieldset>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button type="submit" className="button primary" disabled={telling.busy || day === ''}>
        {t('agency.record-it')}
      </button>
    </form>
  );
};

/** Visits, and when storage and test equipment were looked at last: monthly at least. */
export const Visits = ({ agency, again, isTheirs }: Part): ReactNode => {
  const { t } = useSpeech();
  return (
    <section className="stack" aria-labelledby="visits">
      <h2 id="visits">{t('agency.visits')}</h2>
      <p>
        {t('agency.last-stock', {
          storage: agency.lastStorage ?? t('agency.never'),
          equipment: agency.lastEquipment ?? t('agency.never'),
        })}
      </p>
      <div className="office-grid">
        <ul className="rows">
          {agency.visits.slice(0, VISITS_SHOWN).map((visit) => (
            <li key={visit.visit}>
              <span className="mono">{visit.day}</span>
              <span className="grow">
                {t('agency.visit-says', { by: visit.by, count: visit.stations.length })}
              </span>
            </li>
          ))}
        </ul>
        {isTheirs && <Record today={agency.today} again={again} />}
      </div>
    </section>
  );
};
