import { useId } from 'react';
import type { ReactNode } from 'react';
import { useQuestion } from '../../api/use-question';
import { useSpeech } from '../../words/words';

type Props = { readonly home: string; readonly change: (home: string) => void };

/** A home by its serial: what fits so far is offered, and whether it is one of ours is said. */
export const HomeField = ({ home, change }: Props): ReactNode => {
  const { t } = useSpeech();
  const id = useId();
  const { answer } = useQuestion('homes', home.length < FEWEST ? null : { search: home });
  const found = answer?.homes ?? [];
  const known = found.some((one) => one.home === home);
  return (
    <div className="field">
      <label htmlFor={id}>{t('complaint.home')}</label>
      <input
        id={id}
        className="input mono"
        list={`${id}-found`}
        value={home}
        autoComplete="off"
        spellCheck={false}
        onChange={(event) => change(event.target.value.trim())}
      />
      <datalist id={`${id}-found`}>
        {found.map((one) => (
          <option key={one.home} value={one.home}>
            {one.model}
          </option>
        ))}
      </datalist>
      <p className="quiet small" role="status">
        {home === ''
          ? t('complaint.home-says')
          : answer !== null && (known ? t('complaint.home-known') : t('complaint.home-unknown'))}
      </p>
    </div>
  );
};
/** Letters before anything is looked for. */
const FEWEST = 2;
