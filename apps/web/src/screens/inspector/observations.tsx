import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { isQualityManager, useSignedIn } from '../../session/session';
import { ChoiceField, TextField } from '../../ui/field';
import { Mark } from '../../ui/mark';
import { TroubleNotice } from '../../ui/trouble';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { Agency, Part } from './agency';

type Observation = Agency['observations'][number];
const ABOUT = ['manual', 'storage', 'instrument', 'station', 'other'] as const;
type About = (typeof ABOUT)[number];
const ABOUT_WORDS = {
  manual: 'agency.about-manual',
  storage: 'agency.about-storage',
  instrument: 'agency.about-instrument',
  station: 'holds.station',
  section: 'holds.section',
  other: 'agency.about-other',
} as const;
const STANDING_WORDS = {
  open: 'agency.open',
  answered: 'agency.answered',
  closed: 'agency.closed',
} as const;

const Note = ({ again }: { readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const [about, setAbout] = useState<About>('manual');
  const [subject, setSubject] = useState('');
  const [rule, setRule] = useState('');
  const [dueOn, setDueOn] = useState('');
  const [note, setNote] = useState('');
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = {
      about,
      subject: subject.trim() === '' ? null : subject.trim(),
      rule: rule.trim(),
      dueOn: dueOn === '' ? null : dueOn,
      note: note.trim(),
    };
    if ((await telling.send('observation', body)) !== undefined) setNote('');
  };
  const choose = (id: string): void => setAbout(ABOUT.find((one) => one === id) ?? 'other');
  return (
    <form className="office-form no-print" onSubmit={(event) => void submit(event)}>
      <h3>{t('agency.note-something')}</h3>
      <ChoiceField
        name={t('agency.about')}
        value={about}
        change={choose}
        from={ABOUT.map((id) => ({ id, says: t(ABOUT_WORDS[id]) }))}
      />
      <TextField name={t('agency.which')} value={subject} change={setSubject} />
      <TextField name={t('agency.rule')} value={rule} change={setRule} hint={t('agency.rule-hint')} />
      <TextField name={t('agency.due')} value={dueOn} change={setDueOn} type="date" />
      <TextField name={t('agency.what')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button
        type="submit"
        className="button primary"
        disabled={telling.busy || rule.trim() === '' || note.trim() === ''}
      >
        {t('agency.record-it')}
      </button>
    </form>
  );
};

const AnswerForm = ({ one, again }: { readonly one: Observation; readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const [note, setNote] = useState('');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('observationAnswer', { note: note.trim() }, { observation: one.observation });
  };
  return (
    <form className="office-form grow no-print" onSubmit={submit}>
      <TextField name={t('agency.answer')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <div>
        <button type="submit" className="button" disabled={telling.busy || note.trim() === ''}>
          {t('agency.send-answer')}
        </button>
      </div>
    </form>
  );
};

const Close = ({ one, again }: { readonly one: Observation; readonly again: () => void }): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const close = (accepted: boolean): void => {
    void telling.send(
      'observationClosing',
      { accepted, dueOn: accepted ? null : one.dueOn },
      { observation: one.observation },
    );
  };
  return (
    <div className="choices no-print">
      <button type="button" className="button" disabled={telling.busy} onClick={() => close(true)}>
        {t('agency.accept')}
      </button>
      <button type="button" className="button" disabled={telling.busy} onClick={() => close(false)}>
        {t('agency.send-back')}
      </button>
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
    </div>
  );
};

type RowProps = { readonly one: Observation } & Omit<Part, 'agency'>;
const Row = ({ one, again, isTheirs }: RowProps): ReactNode => {
  const { t } = useSpeech();
  const { me } = useSignedIn();
  const times = useTimes();
  return (
    <li>
      <Mark name={one.standing === 'closed' ? 'proven' : one.overdue ? 'refused' : 'due'} size={28} />
      <div className="grow stack tight">
        <p>
          <span className="tag">{t(ABOUT_WORDS[one.about])}</span> {one.subject}{' '}
          <span className="quiet">({one.rule})</span>
        </p>
        <p>{one.note ?? t('agency.erased')}</p>
        {one.answers.map((answer) => (
          <p key={answer.at} className="quiet">
            {t('agency.answer-by', { by: answer.by, day: times.day(answer.at) })} {answer.note}
          </p>
        ))}
        <p className="quiet small">
          {t(one.overdue ? 'agency.overdue' : STANDING_WORDS[one.standing])}
          {one.dueOn === null ? '' : ` · ${t('agency.due-on', { day: one.dueOn })}`}
        </p>
      </div>
      {isTheirs && one.standing === 'answered' && <Close one={one} again={again} />}
      {isQualityManager(me) && one.standing === 'open' && <AnswerForm one={one} again={again} />}
    </li>
  );
};

/** What the agency noted that hangs on no section, and how the plant answered. */
export const Observations = ({ agency, again, isTheirs }: Part): ReactNode => {
  const { t } = useSpeech();
  const open = agency.observations.filter(({ standing }) => standing !== 'closed');
  const closed = agency.observations.filter(({ standing }) => standing === 'closed').slice(0, 3);
  return (
    <section className="stack" aria-labelledby="observations">
      <h2 id="observations">{t('agency.observations', { count: open.length })}</h2>
      <div className="office-grid">
        <ul className="rows">
          {[...open, ...closed].map((one) => (
            <Row key={one.observation} one={one} again={again} isTheirs={isTheirs} />
          ))}
        </ul>
        {isTheirs && <Note again={again} />}
      </div>
    </section>
  );
};
