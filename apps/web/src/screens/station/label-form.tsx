import type { ReactNode, SyntheticEvent } from 'react';
import { useSpeech } from '../../words/words';
import type { Card } from './cards';
import { useDraft } from './drafts';
import { FormFoot } from './form-foot';
import { PanelHead } from './panel-head';
import { PhotoEntry } from '../../ui/photo-entry';
import { ScannedField } from './scanned-field';
import { useTelling } from './use-telling';
import { useWork } from './work-context';

/** Three letters and six digits, as the label is stamped (24 CFR 3280.11(b)). */
const LABEL = /^[A-Z]{3} ?\d{3} ?\d{3}$/;

type LabelDraft = { readonly number: string; readonly photos: readonly string[] };
const EMPTY: LabelDraft = { number: '', photos: [] };

export const LabelForm = ({ card }: { readonly card: Card }): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, close, told } = useWork();
  const telling = useTelling();
  const { draft, change, forget } = useDraft<LabelDraft>(`${section.serial}/label`, EMPTY);
  const { number, photos } = draft;
  const stamped = number.trim().toUpperCase();
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const body = { serial: section.serial, number: stamped, photos: [...photos], station: station.id };
    const result = await telling.send('label', body);
    if (result !== 'turned-down') forget();
    const isRefused = typeof result === 'object' && result.answer === 'refused';
    told(result, t(isRefused ? 'told.label-refused' : 'told.labelled', { number: stamped }));
  };
  return (
    <form className="panel-form stack" onSubmit={(event) => void submit(event)}>
      <PanelHead title={say(card.name)} close={close} />
      <ScannedField name={t('label.number')} value={number} change={(next) => change({ number: next })} />
      <p className="quiet">{t('label.form')}</p>
      <PhotoEntry
        photos={photos}
        needed={card.photo === 'always'}
        change={(next) => change({ photos: next })}
      />
      <FormFoot telling={telling} action={t('label.affix')} ready={LABEL.test(stamped)} />
    </form>
  );
};
