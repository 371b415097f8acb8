import { useId } from 'react';
import type { ReactNode } from 'react';

type Props = {
  readonly name: string;
  readonly value: string;
  readonly change: (value: string) => void;
};

/** A sentence or several. */
export const TextArea = ({ name, value, change }: Props): ReactNode => {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{name}</label>
      <textarea
        id={id}
        className="input claim-area"
        value={value}
        maxLength={2000}
        onChange={(event) => change(event.target.value)}
      />
    </div>
  );
};
