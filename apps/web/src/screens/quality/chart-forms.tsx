import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useTell } from '../../api/use-tell';
import { TextField } from '../../ui/field';
import { TroubleNotice } from '../../ui/trouble';
import { useSpeech } from '../../words/words';

type Props = { readonly station: string; readonly day: string; readonly again: () => void };

/** "New nail gun, 3 March": kept as an event, shown as a flag on the chart. */
export const NoteForm = ({ station, day, again }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const [on, setOn] = useState(day);
  const [note, setNote] = useState('');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('chartNote', { day: on, note }, { station }).then((told) => {
      if (told !== undefined) setNote('');
    });
  };
  return (
    <form className="chart-form no-print" onSubmit={submit}>
      <h3>{t('chart-note.title')}</h3>
      <TextField name={t('chart-note.day')} value={on} change={setOn} type="date" />
      <TextField name={t('chart-note.what')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button type="submit" className="button" disabled={telling.busy || note === '' || on === ''}>
        {t('chart-note.record')}
      </button>
    </form>
  );
};

/** A new phase: which days the limits come from, and why. */
export const BaselineForm = ({ station, day, again }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const [from, setFrom] = useState('');
  const [to, setTo] = useState(day);
  const [note, setNote] = useState('');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('baseline', { from, to, note }, { station });
  };
  return (
    <form className="chart-form no-print" onSubmit={submit}>
      <h3>{t('baseline.title')}</h3>
      <TextField name={t('baseline.from')} value={from} change={setFrom} type="date" />
      <TextField name={t('baseline.to')} value={to} change={setTo} type="date" />
      <TextField name={t('baseline.why')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button
        type="submit"
        className="button"
        disabled={telling.busy || from === '' || to === '' || note === ''}
      >
        {t('baseline.set')}
      </button>
    </form>
  );
};

/** The open item of an alarm: it closes with a cause. */
export const CauseForm = ({ station, day, again }: Props): ReactNode => {
  const { t } = useSpeech();
  const telling = useTell(again);
  const [note, setNote] = useState('');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void telling.send('acknowledgement', { day, note }, { station });
  };
  return (
    <form className="chart-form no-print" onSubmit={submit}>
      <TextField name={t('alarm.cause')} value={note} change={setNote} />
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      <button type="submit" className="button primary" disabled={telling.busy || note === ''}>
        {t('alarm.acknowledge')}
      </button>
    </form>
  );
};
