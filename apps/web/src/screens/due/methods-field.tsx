import type { ReactNode } from 'react';
import { useSpeech } from '../../words/words';
import { METHODS, METHOD_WORDS } from './file';
import type { Method } from './file';

type Props = {
  readonly chosen: readonly Method[];
  readonly change: (chosen: readonly Method[]) => void;
};

/** How it was found out: 3282.404(c). */
export const MethodsField = ({ chosen, change }: Props): ReactNode => {
  const { t } = useSpeech();
  return (
    <fieldset className="field">
      <legend className="field-name">{t('due.methods')}</legend>
      <div className="stack tight">
        {METHODS.map((method) => (
          <label key={method} className="check">
            <input
              type="checkbox"
              checked={chosen.includes(method)}
              onChange={(event) =>
                change(event.target.checked ? [...chosen, method] : chosen.filter((one) => one !== method))
              }
            />
            {t(METHOD_WORDS[method])}
          </label>
        ))}
      </div>
    </fieldset>
  );
};
