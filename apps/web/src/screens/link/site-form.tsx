import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { ask } from '../../api/client';
import type { Trouble } from '../../api/client';
import { hereAndNow, newKey } from '../../api/key';
import { TextField } from '../../ui/field';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { isTyped, sentValues } from '../station/values';
import type { Typed } from '../station/values';
import { LinkTrouble } from './link-trouble';
import type { StepProps } from './site-card';
import { SitePhotos } from './site-photos';
import { SiteValue } from './site-value';

type Props = StepProps & { readonly told: (findings: number) => void };

type Entry = {
  readonly typed: Typed;
  readonly photos: readonly string[];
  readonly instrument: string;
};

/** The same key until it was taken: sending twice records once. */
const useSending = ({ card, name, token, told }: Props, { typed, photos, instrument }: Entry) => {
  const [key] = useState(() => newKey());
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<Trouble | null>(null);
  const send = async (): Promise<void> => {
    setBusy(true);
    const body = {
      ...{ name, operation: card.operation, photos, occurredAt: hereAndNow() },
      values: sentValues(card, typed),
      instrument: instrument.trim() === '' ? null : instrument.trim(),
    };
    const result = await ask('linkWork', {}, { body, key, token });
    setBusy(false);
    if (result.ok) told(result.answer.findings.length);
    else setTrouble(result.trouble);
  };
  return { busy, trouble, send };
};

/** What is asked of one step, and the signature under it. */
export const SiteForm = (props: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { card, name, token, texts } = props;
  const [entry, setEntry] = useState<Entry>({ typed: {}, photos: [], instrument: '' });
  const { busy, trouble, send } = useSending(props, entry);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    void send();
  };
  return (
    <form className="stack" onSubmit={submit}>
      {card.caution !== null && (
        <p className="notice due">
          <Mark name="note" size={28} />
          <span className="grow">{say(card.caution)}</span>
        </p>
      )}
      {card.values.filter(isTyped).map((asked) => (
        <SiteValue
          key={asked.characteristic}
          {...{ asked, texts }}
          typed={entry.typed[asked.characteristic] ?? ''}
          change={(value) => setEntry({ ...entry, typed: { ...entry.typed, [asked.characteristic]: value } })}
        />
      ))}
      {card.instrument !== null && (
        <TextField
          name={t('site-link.instrument')}
          value={entry.instrument}
          change={(instrument) => setEntry({ ...entry, instrument })}
        />
      )}
      <SitePhotos
        {...{ token, photos: entry.photos }}
        needed={card.photo === 'always'}
        add={(photo) => setEntry((now) => ({ ...now, photos: [...new Set([...now.photos, photo])] }))}
      />
      {trouble !== null && <LinkTrouble trouble={trouble} again={() => void send()} />}
      <button type="submit" className="button primary" disabled={busy || name === ''}>
        {name === '' ? t('site-link.name-first') : t('site-link.sign', { name })}
      </button>
    </form>
  );
};
