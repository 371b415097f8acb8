import type { AnswerOf } from '@libs/contracts';
import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { useQuestion } from '../../api/use-question';
import { places } from '../../router/places';
import { ChoiceField, TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';

type Purpose = AnswerOf<'links'>['links'][number]['purpose'];
type Made = { readonly address: string; readonly until: string };
type HomeProps = { readonly home: string; readonly again: () => void };

const PURPOSES = [
  ['installer', 'links.installer'],
  ['owner', 'links.owner'],
  ['owner-with-defects', 'links.owner-with-defects'],
] as const;
/** Setting a home takes weeks (memory). */
const DAYS = '60';

/** In clear once, here. */
const Once = ({ made, close }: { readonly made: Made; readonly close: () => void }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  return (
    <div className="notice proven" role="status">
      <p className="grow">
        {t('links.once', { until: times.moment(made.until) })}
        <br />
        <code className="token">{made.address}</code>
      </p>
      <button type="button" className="button" onClick={close}>
        {t('links.noted')}
      </button>
    </div>
  );
};

const isPurpose = (id: string): id is Purpose => PURPOSES.some(([purpose]) => purpose === id);

const Make = ({ home, again }: HomeProps): ReactNode => {
  const { t } = useSpeech();
  const [name, setName] = useState('');
  const [purpose, setPurpose] = useState<Purpose>('installer');
  const [days, setDays] = useState(DAYS);
  const [made, setMade] = useState<Made | null>(null);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = { purpose, name: name.trim(), days: Number(days) };
    const result = await ask('linkIssue', { serial: home }, { body });
    setTrouble(result.ok ? null : result.trouble);
    if (!result.ok) return;
    const { token, until } = result.answer;
    const path = places.link(purpose === 'installer' ? 'site-work' : 'build-book', token);
    setMade({ address: `${window.location.origin}${path}`, until });
    setName('');
    again();
  };
  return (
    <>
      {made !== null && <Once made={made} close={() => setMade(null)} />}
      <form className="office-form" onSubmit={(event) => void submit(event)}>
        <ChoiceField
          name={t('links.opens')}
          value={purpose}
          from={PURPOSES.map(([id, word]) => ({ id, says: t(word) }))}
          change={(id) => {
            if (isPurpose(id)) setPurpose(id);
          }}
        />
        <TextField name={t('links.for')} value={name} change={setName} />
        <TextField name={t('links.days')} value={days} change={setDays} />
        {trouble !== null && <TroubleNotice trouble={trouble} />}
        <div>
          <button
            type="submit"
            className="button primary"
            disabled={name.trim() === '' || !/^[1-9]\d{0,2}$/.test(days)}
          >
            {t('links.make')}
          </button>
        </div>
      </form>
    </>
  );
};

const Out = ({ home, again, links }: HomeProps & AnswerOf<'links'>): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  const words = new Map<string, (typeof PURPOSES)[number][1]>(PURPOSES);
  const end = async (link: string): Promise<void> => {
    await ask('linkEnd', { serial: home, link }, { body: {} });
    again();
  };
  return (
    <ul className="rows">
      {links.map(({ link, purpose, name, until, openedAt }) => (
        <li key={link}>
          <p className="grow">
            {t('links.row', { name, until: times.moment(until) })} · {t(words.get(purpose) ?? 'links.owner')}{' '}
            · {openedAt === null ? t('links.unopened') : t('links.opened', { at: times.moment(openedAt) })}
          </p>
          <button type="button" className="button" onClick={() => void end(link)}>
            {t('links.end')}
          </button>
        </li>
      ))}
    </ul>
  );
};

/** Links that let an installer or an owner see this home without an account. */
export const LinksPanel = ({ home }: { readonly home: string }): ReactNode => {
  const { t } = useSpeech();
  const { answer, trouble, again } = useQuestion('links', { serial: home });
  return (
    <details className="no-print links-panel">
      <summary>{t('links.title')}</summary>
      <div className="stack">
        <p className="quiet">{t('links.says')}</p>
        {trouble !== null && <TroubleNotice trouble={trouble} again={again} />}
        {answer !== null && answer.links.length === 0 && <p>{t('links.none')}</p>}
        {answer !== null && <Out home={home} again={again} links={answer.links} />}
        <Make home={home} again={again} />
      </div>
    </details>
  );
};
