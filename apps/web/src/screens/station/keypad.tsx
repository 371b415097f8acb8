import { useState } from 'react';
import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import { isInches } from '../../ui/metric';

const DIGITS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const;
const SIXTEENTHS = [
  '1/16',
  '1/8',
  '3/16',
  '1/4',
  '5/16',
  '3/8',
  '7/16',
  '1/2',
  '9/16',
  '5/8',
  '11/16',
  '3/4',
  '13/16',
  '7/8',
  '15/16',
] as const;

type Props = {
  readonly typed: string;
  readonly unit: string | null;
  readonly whole: boolean;
  readonly change: (typed: string) => void;
};

/** `36 1/2` with another fraction: the whole inches stay. */
const withFraction = (typed: string, fraction: string): string => {
  const whole = /^\d+/.exec(typed.trim())?.[0] ?? '';
  const inches = /^\d+\/\d+$/.test(typed.trim()) ? '' : whole;
  return inches === '' || inches === '0' ? fraction : `${inches} ${fraction}`;
};

/** Backwards over a fraction takes the whole fraction, as it came. */
const shortened = (typed: string): string =>
  /\d+\/\d+$/.test(typed) ? typed.replace(/\s*\d+\/\d+$/, '') : typed.slice(0, -1);

const Fractions = ({ typed, change }: Pick<Props, 'typed' | 'change'>): ReactNode => {
  const { t } = useSpeech();
  return (
    <div className="fractions" role="group" aria-label={t('keypad.fractions')}>
      {SIXTEENTHS.map((fraction) => (
        <button
          key={fraction}
          type="button"
          className="key mono"
          aria-pressed={typed.endsWith(` ${fraction}`) || typed === fraction}
          onClick={() => change(withFraction(typed, fraction))}
        >
          {fraction}
        </button>
      ))}
    </div>
  );
};

const Digits = ({ typed, whole, change }: Omit<Props, 'unit'>): ReactNode => {
  const { t } = useSpeech();
  const press = (key: string): void => change(/\/\d+$/.test(typed) ? key : typed + key);
  return (
    <div className="digits">
      {DIGITS.map((digit) => (
        <button key={digit} type="button" className="key mono" onClick={() => press(digit)}>
          {digit}
        </button>
      ))}
      <button
        type="button"
        className="key mono"
        disabled={whole || typed.includes('.')}
        onClick={() => press(typed === '' ? '0.' : '.')}
      >
        .
      </button>
      <button type="button" className="key mono" onClick={() => press('0')}>
        0
      </button>
      <button type="button" className="key" onClick={() => change(shortened(typed))}>
        {t('keypad.back')}
      </button>
    </div>
  );
};

/** Big enough for gloves. On a tape measure's unit the sixteenths are one tap away, in the digits' place. */
export const Keypad = ({ typed, unit, whole, change }: Props): ReactNode => {
  const { t } = useSpeech();
  const [fractions, setFractions] = useState(false);
  return (
    <div className="keypad">
      {fractions ? (
        <Fractions typed={typed} change={change} />
      ) : (
        <Digits typed={typed} whole={whole} change={change} />
      )}
      {isInches(unit) && (
        <button type="button" className="key key-wide" onClick={() => setFractions(!fractions)}>
          {t(fractions ? 'keypad.digits' : 'keypad.fractions')}
        </button>
      )}
    </div>
  );
};
