import { useEffect, useId, useRef, useState } from 'react';
import type { ReactNode } from 'react';
import { useDisplay } from '../../look/display';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import type { WordKey } from '../../words/words';
import type { ValueAsked } from './cards';
import { Keypad } from './keypad';
import { asRead, inMetric } from '../../ui/metric';
import { SourceSays } from '../../ui/source-says';
import { choicesOf, decimalOf, isNumber, judged } from './values';
import type { Verdict } from './values';

type Props = { readonly asked: ValueAsked; readonly typed: string; readonly change: (typed: string) => void };

const VERDICTS = {
  meets: { mark: 'proven', word: 'value.meets' },
  fails: { mark: 'refused', word: 'value.fails' },
  unreadable: { mark: 'refused', word: 'value.unreadable' },
  'not-whole': { mark: 'refused', word: 'value.not-whole' },
  'below-zero': { mark: 'refused', word: 'value.below-zero' },
  none: { mark: null, word: 'value.none' },
} as const;

const VerdictSays = ({
  asked,
  verdict,
}: {
  readonly asked: ValueAsked;
  readonly verdict: Verdict;
}): ReactNode => {
  const { t } = useSpeech();
  const { mark, word } = VERDICTS[verdict];
  const optional = verdict === 'none' && asked.asked === 'where-any';
  return (
    <span className={`value-verdict ${verdict}`} role="status">
      {mark !== null && <Mark name={mark} size={20} />}
      {t(optional ? 'value.where-any' : word)}
    </span>
  );
};

const YES_NO: readonly (readonly [string, WordKey])[] = [
  ['yes', 'yes'],
  ['no', 'no'],
];

const Buttons = ({ asked, typed, change }: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const offered: readonly (readonly [string, string])[] =
    asked.kind === 'yes-no'
      ? YES_NO.map(([value, key]) => [value, t(key)])
      : choicesOf(asked).map((choice) => [choice, say(named(plant.texts, choice))]);
  return (
    <div className="choices">
      {offered.map(([value, word]) => (
        <button
          key={value}
          type="button"
          className="button choice"
          aria-pressed={typed === value}
          onClick={() => change(typed === value ? '' : value)}
        >
          {word}
        </button>
      ))}
    </div>
  );
};

const Readout = ({ asked, typed, change, open, setOpen }: Props & Opening): ReactNode => {
  const { t, say } = useSpeech();
  const id = useId();
  const label = say(asked.label);
  const unit = asked.unitSymbol ?? '';
  return (
    <div className="readout">
      <label className="sr-only" htmlFor={id}>
        {unit === '' ? label : t('value.of', { label, unit })}
      </label>
      {/* The keypad below is the keyboard: the device's own would hide the requirement. */}
      <input
        id={id}
        className="input mono readout-field"
        inputMode="none"
        autoComplete="off"
        value={typed}
        onFocus={() => setOpen(true)}
        onChange={(event) => change(event.target.value)}
      />
      <span className="readout-unit mono">{unit}</span>
      <button type="button" className="button" aria-expanded={open} onClick={() => setOpen(!open)}>
        {t(open ? 'keypad.close' : 'keypad.open')}
      </button>
    </div>
  );
};
type Opening = { readonly open: boolean; readonly setOpen: (open: boolean) => void };

/** Requirement, figure and verdict stay together in sight while the keypad is used. */
const NumberEntry = (props: Props): ReactNode => {
  const { asked, typed, change } = props;
  const { locale } = useSpeech();
  const { metric } = useDisplay();
  const [open, setOpen] = useState(false);
  const entry = useRef<HTMLDivElement>(null);
  const decimal = decimalOf(typed, asked.unit);
  const beside = metric && decimal !== null ? inMetric(decimal, asked.unit, locale) : null;
  useEffect(() => {
    if (open) entry.current?.closest('fieldset')?.scrollIntoView({ block: 'start' });
  }, [open]);
  return (
    <div className="number-entry" ref={entry}>
      <Readout {...props} open={open} setOpen={setOpen} />
      <div className="row">
        <VerdictSays asked={asked} verdict={judged(asked, typed)} />
        {beside !== null && decimal !== null && (
          <span className="quiet small mono">
            {asRead(decimal, asked.unit)} = {beside}
          </span>
        )}
      </div>
      {open && <Keypad typed={typed} unit={asked.unit} whole={asked.kind === 'count'} change={change} />}
    </div>
  );
};

const Free = ({ asked, typed, change }: Props): ReactNode => {
  const { say } = useSpeech();
  return (
    <input
      className="input"
      aria-label={say(asked.label)}
      type={asked.kind === 'date' ? 'date' : 'text'}
      value={typed}
      onChange={(event) => change(event.target.value)}
    />
  );
};

/** What the plan names is one tap; what differs from it is typed, and found to differ. */
const NamedOrFree = (props: Props): ReactNode => {
  const { t } = useSpeech();
  const { asked, typed } = props;
  const isOther = typed !== '' && !choicesOf(asked).includes(typed);
  const [other, setOther] = useState(isOther);
  return (
    <>
      <Buttons {...props} />
      <div className="choices">
        <button
          type="button"
          className="button choice"
          aria-expanded={other || isOther}
          onClick={() => setOther(!other)}
        >
          {t('value.other')}
        </button>
      </div>
      {(other || isOther) && <Free {...props} />}
    </>
  );
};

const control = (props: Props): ReactNode => {
  const { asked } = props;
  if (isNumber(asked)) return <NumberEntry {...props} />;
  if (asked.kind === 'yes-no' || asked.choices !== undefined) return <Buttons {...props} />;
  return choicesOf(asked).length > 0 ? <NamedOrFree {...props} /> : <Free {...props} />;
};

/** One value: what is asked, what is required in words, the entry, and at once whether it meets it. */
export const ValueEntry = (props: Props): ReactNode => {
  const { t, say } = useSpeech();
  const { asked, typed } = props;
  return (
    <fieldset className="value">
      <legend className="value-label">{say(asked.label)}</legend>
      <p className="value-required">
        {say(asked.requiredSays)}
        {asked.worstOf > 1 && <span className="quiet"> {t('value.worst-of', { count: asked.worstOf })}</span>}
        {asked.lookAt !== undefined && <strong> {say(asked.lookAt)}</strong>}
      </p>
      {control(props)}
      <div className="row spread">
        {isNumber(asked) ? <span /> : <VerdictSays asked={asked} verdict={judged(asked, typed)} />}
        <SourceSays source={asked.source} />
      </div>
    </fieldset>
  );
};
