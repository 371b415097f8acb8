import type { ReactNode } from 'react';
import { useSignedIn } from '../../session/session';
import { useSpeech } from '../../words/words';

type Props = {
  readonly use: 'hold' | 'pull' | 'correction';
  readonly reason: string;
  readonly change: (reason: string) => void;
};

/** The plant's own reason codes; a plant that lists none is asked for a word of its own. */
export const ReasonChoice = ({ use, reason, change }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const reasons = (plant.reasons ?? []).filter((one) => one.for.includes(use));
  if (reasons.length === 0)
    return (
      <label className="field">
        <span className="field-name">{t('reason')}</span>
        <input
          className="input"
          value={reason}
          maxLength={64}
          onChange={(event) => change(event.target.value)}
        />
      </label>
    );
  return (
    <fieldset className="stack tight">
      <legend className="field-name">{t('reason')}</legend>
      <div className="choices">
        {reasons.map((one) => (
          <button
            key={one.id}
            type="button"
            className="button choice"
            aria-pressed={reason === one.id}
            onClick={() => change(one.id)}
          >
            {say(one.name)}
          </button>
        ))}
      </div>
    </fieldset>
  );
};
