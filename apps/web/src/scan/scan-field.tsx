import { useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useSpeech } from '../words/words';
import { tidied } from './serials';
import './scan.css';

type Props = { readonly found: (serial: string) => void; readonly label?: string };

/** For a label that cannot be scanned: any case, any spaces. */
export const ScanField = ({ found, label }: Props): ReactNode => {
  const { t } = useSpeech();
  const [text, setText] = useState('');
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    const serial = tidied(text);
    if (serial === '') return;
    setText('');
    found(serial);
  };
  return (
    <form className="scan" onSubmit={submit} role="search">
      <label className="field scan-field">
        <span className="field-name">{label ?? t('scan.label')}</span>
        <input
          className="input mono"
          value={text}
          onChange={(event) => setText(event.target.value)}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          enterKeyHint="go"
          placeholder={t('scan.example')}
        />
      </label>
      <button type="submit" className="button primary scan-go">
        {t('scan.open')}
      </button>
    </form>
  );
};
