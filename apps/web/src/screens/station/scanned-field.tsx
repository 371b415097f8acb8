import type { ReactNode } from 'react';
import { useScanTarget } from './scan-target';

type Props = { readonly name: string; readonly value: string; readonly change: (value: string) => void };

/** Filled by the scanner wherever the focus is, or by hand. */
export const ScannedField = ({ name, value, change }: Props): ReactNode => {
  useScanTarget(change);
  return (
    <label className="field">
      <span className="field-name">{name}</span>
      <input
        className="input mono"
        value={value}
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        onChange={(event) => change(event.target.value)}
      />
    </label>
  );
};
