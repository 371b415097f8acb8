import { useRef, useState } from 'react';
import type { ReactNode, SyntheticEvent } from 'react';
import { useSpeech } from '../../words/words';

const DIGITS = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const;
/** The contract's own least length of a PIN. */
const SHORTEST = 4;

type Props = {
  readonly enter: (pin: string) => void;
  readonly busy: boolean;
  /** Why the last one did not do. Its room is kept free, so that no key moves under a finger. */
  readonly says: ReactNode;
};

/** Large keys for gloves; a keyboard or a password keeper may fill the field as well. */
export const PinPad = ({ enter, busy, says }: Props): ReactNode => {
  const { t } = useSpeech();
  const [pin, setPin] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const press = (digit: string): void => setPin((before) => before + digit);
  const submit = (event: SyntheticEvent): void => {
    event.preventDefault();
    if (pin.length < SHORTEST) return;
    enter(pin);
    setPin('');
    field.current?.focus();
  };
  return (
    <form className="pin-form stack" onSubmit={submit}>
      <label className="field">
        <span className="field-name">{t('sign-in.pin')}</span>
        <input
          ref={field}
          className="input pin-field mono"
          type="password"
          inputMode="numeric"
          autoComplete="current-password"
          value={pin}
          onChange={(event) => setPin(event.target.value)}
          autoFocus
        />
      </label>
      <p className="pin-says" role="alert">
        {says}
      </p>
      <div className="pin-keys">
        {DIGITS.map((digit) => (
          <button key={digit} type="button" className="button big mono" onClick={() => press(digit)}>
            {digit}
          </button>
        ))}
        <button type="button" className="button" onClick={() => setPin((before) => before.slice(0, -1))}>
          {t('keypad.back')}
        </button>
        <button type="button" className="button big mono" onClick={() => press('0')}>
          0
        </button>
        <button type="submit" className="button primary" disabled={busy || pin.length < SHORTEST}>
          {t('sign-in')}
        </button>
      </div>
    </form>
  );
};
