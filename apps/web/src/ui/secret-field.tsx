import { useId } from 'react';
import type { ReactNode } from 'react';

type Props = {
  readonly name: string;
  readonly value: string;
  readonly change: (value: string) => void;
  readonly hint?: string;
  /** A password that is being chosen, for a password keeper to remember. */
  readonly fresh?: boolean;
  /** A code that works once: it may be read. */
  readonly once?: boolean;
};

const keeper = ({ fresh, once }: Pick<Props, 'fresh' | 'once'>): string => {
  if (once === true) return 'one-time-code';
  return fresh === true ? 'new-password' : 'current-password';
};

/** A PIN, a password or a code. Pasting is welcome: password keepers do. */
export const SecretField = ({ name, value, change, hint, fresh, once }: Props): ReactNode => {
  const id = useId();
  return (
    <div className="field">
      <label className="field-name" htmlFor={id}>
        {name}
      </label>
      <input
        id={id}
        className="input mono"
        type={once === true ? 'text' : 'password'}
        maxLength={512}
        value={value}
        autoComplete={keeper({ fresh, once })}
        onChange={(event) => change(event.target.value)}
      />
      {hint !== undefined && <p className="quiet small">{hint}</p>}
    </div>
  );
};
