import type { ReactNode, SyntheticEvent } from 'react';
import { useSpeech } from '../../words/words';
import { useDraft } from './drafts';
import { FormFoot } from './form-foot';
import { PanelHead } from './panel-head';
import { ReasonChoice } from './reason-choice';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

const WORDS = {
  hold: { title: 'hold.title', action: 'hold.place', told: 'told.held' },
  pull: { title: 'pull.title', action: 'pull.off', told: 'told.pulled' },
} as const;

/** Holding a section and pulling it off the line ask for the same: a reason, and perhaps a note. */
export const ReasonForm = ({ use }: { readonly use: 'hold' | 'pull' }): ReactNode => {
  const { t } = useSpeech();
  const { section, station, close, told } = useWork();
  const telling = useTelling();
  const { draft, change, forget } = useDraft(`${section.serial}/${use}`, { reason: '', note: '' });
  const { reason, note } = draft;
  const words = WORDS[use];
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = {
      serial: section.serial,
      reason,
      station: station.id,
      ...(note.trim() === '' ? {} : { note: note.trim() }),
    };
    const result = await telling.send(use, body);
    if (result !== 'turned-down') forget();
    told(result, t(words.told));
  };
  return (
    <form className="panel-form stack" onSubmit={(event) => void submit(event)}>
      <PanelHead title={t(words.title)} close={close} />
      <ReasonChoice use={use} reason={reason} change={(next) => change({ reason: next })} />
      <label className="field">
        <span className="field-name">{t('note')}</span>
        <textarea
          className="input"
          rows={2}
          maxLength={2000}
          value={note}
          onChange={(event) => change({ note: event.target.value })}
        />
      </label>
      <FormFoot telling={telling} action={t(words.action)} ready={reason.trim() !== ''} />
    </form>
  );
};
