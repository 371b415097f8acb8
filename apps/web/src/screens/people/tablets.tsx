import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';

const NOTHING = {};

const OfferForm = ({ offered }: { readonly offered: (code: string) => void }): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const [name, setName] = useState('');
  const [station, setStation] = useState('');
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const offer = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const stations = station === '' ? [] : [station];
    const result = await ask('tablet', {}, { body: { name: name.trim(), stations } });
    setTrouble(result.ok ? null : result.trouble);
    if (!result.ok) return;
    setName('');
    offered(result.answer.code);
  };
  return (
    <form className="row token-form" onSubmit={(event) => void offer(event)}>
      <div className="grow">
        <TextField name={t('people.tablet-name')} value={name} change={setName} />
      </div>
      <ChoiceField
        name={t('people.stations')}
        value={station}
        none="–"
        from={plant.stations.map(({ id, name: words }) => ({ id, says: say(words) }))}
        change={setStation}
      />
      <button type="submit" className="button" disabled={name.trim() === ''}>
        {t('people.tablet-offer')}
      </button>
      {trouble !== null && <TroubleNotice trouble={trouble} />}
    </form>
  );
};

/** The tablets that PINs count on: a code binds one, and one that is lost is let go at once. */
export const Tablets = (): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const times = useTimes();
  const { answer, trouble, again } = useQuestion('tablets', NOTHING);
  const [code, setCode] = useState<string | null>(null);
  const [stuck, setStuck] = useState<Trouble | null>(null);
  const end = async (tablet: string): Promise<void> => {
    const result = await ask('tabletEnd', { tablet }, { body: {} });
    setStuck(result.ok ? null : result.trouble);
    if (result.ok) again();
  };
  const problem = stuck ?? trouble;
  const stationsOf = (ids: readonly string[]): string =>
    plant.stations
      .filter(({ id }) => ids.includes(id))
      .map(({ name }) => say(name))
      .join(', ');
  return (
    <section className="stack" aria-labelledby="tablets">
      <h2 id="tablets">
        {t('people.tablets', { count: answer?.tablets.filter(({ bound }) => bound).length ?? 0 })}
      </h2>
      <p>{t('people.tablets-says')}</p>
      <OfferForm
        offered={(made) => {
          setCode(made);
          again();
        }}
      />
      {code !== null && (
        <p className="notice proven" role="status">
          <span className="grow">
            {t('people.tablet-code')} <code className="token">{code}</code>
          </span>
        </p>
      )}
      {problem !== null && <TroubleNotice trouble={problem} again={again} />}
      <ul className="access-list">
        {answer?.tablets.map(({ tablet, name, stations, bound, seenAt }) => (
          <li key={tablet} className="row spread">
            <span>
              <strong>{name}</strong> <span className="quiet small mono">{tablet}</span>{' '}
              <span className="quiet">
                {stationsOf(stations)}{' '}
                {bound ? t('people.tablet-seen', { seen: times.moment(seenAt) }) : t('people.tablet-waits')}
              </span>
            </span>
            <button type="button" className="button" onClick={() => void end(tablet)}>
              {t('people.tablet-end')}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
};
