import { useId } from 'react';
import type { ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import { choicesOf, isNumber, judged } from '../station/values';
import type { SiteCard, StepProps } from './site-card';

type Props = {
  readonly asked: SiteCard['values'][number];
  readonly texts: StepProps['texts'];
  readonly typed: string;
  readonly change: (typed: string) => void;
};

const SAYS = {
  meets: 'value.meets',
  fails: 'value.fails',
  unreadable: 'value.unreadable',
  'not-whole': 'value.not-whole',
  'below-zero': 'value.below-zero',
} as const;

const Choices = ({ asked, texts, typed, change }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const offered =
    asked.kind === 'yes-no'
      ? [
          { value: 'yes', says: t('yes') },
          { value: 'no', says: t('no') },
        ]
      : choicesOf(asked).map((value) => ({ value, says: say(named(texts, value)) }));
  return (
    <div className="choices">
      {offered.map(({ value, says }) => (
        <button
          key={value}
          type="button"
          className="button choice"
          aria-pressed={typed === value}
          onClick={() => change(typed === value ? '' : value)}
        >
          {says}
        </button>
      ))}
    </div>
  );
};

const Written = ({ asked, typed, change }: Props): ReactNode => {
  const { say } = useSpeech();
  const id = useId();
  return (
    <div className="row">
      <label className="sr-only" htmlFor={id}>
        {say(asked.label)}
      </label>
      <input
        id={id}
        className="input mono grow"
        inputMode={isNumber(asked) ? 'decimal' : 'text'}
        type={asked.kind === 'date' ? 'date' : 'text'}
        autoComplete="off"
        value={typed}
        onChange={(event) => change(event.target.value)}
      />
      <span className="mono">{asked.unitSymbol ?? ''}</span>
    </div>
  );
};

/** One value on a phone that has its own keyboard, and at once whether it meets what is required. */
export const SiteValue = (props: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { asked, typed } = props;
  const verdict = judged(asked, typed);
  const offered = asked.kind === 'yes-no' || choicesOf(asked).length > 0;
  return (
    <fieldset className="stack tight">
      <legend className="field-name">{say(asked.label)}</legend>
      <p>{say(asked.requiredSays)}</p>
      {offered ? <Choices {...props} /> : <Written {...props} />}
      <p role="status" className="row small">
        {verdict !== 'none' && (
          <>
            <Mark name={verdict === 'meets' ? 'proven' : 'refused'} size={20} />
            {t(SAYS[verdict])}
          </>
        )}
      </p>
    </fieldset>
  );
};
