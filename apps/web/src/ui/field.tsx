import { useId } from 'react';
import type { ReactNode } from 'react';

type TextProps = {
  readonly name: string;
  readonly value: string;
  readonly change: (value: string) => void;
  readonly mono?: boolean;
  readonly type?: 'text' | 'date' | 'month';
  readonly hint?: string;
};

/** One line of text with its name above it. */
export const TextField = ({ name, value, change, mono, type, hint }: TextProps): ReactNode => {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        className={mono === true ? 'input mono' : 'input'}
        type={type ?? 'text'}
        value={value}
        autoComplete="off"
        onChange={(event) => change(event.target.value)}
      />
      {hint !== undefined && <p className="quiet small">{hint}</p>}
    </div>
  );
};

type Choice = { readonly id: string; readonly says: string };
type ChoiceProps = {
  readonly name: string;
  readonly value: string;
  readonly from: readonly Choice[];
  readonly change: (id: string) => void;
  /** What stands there while nothing is chosen. */
  readonly none?: string;
};

/** One of a list. */
export const ChoiceField = ({ name, value, from, change, none }: ChoiceProps): ReactNode => {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <select id={id} className="input" value={value} onChange={(event) => change(event.target.value)}>
        {none !== undefined && <option value="">{none}</option>}
        {from.map((one) => (
          <option key={one.id} value={one.id}>
            {one.says}
          </option>
        ))}
      </select>
    </div>
  );
};
