import type { FormEvent, ReactNode } from 'react';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { openToSignOff } from './cards';
import type { Card } from './cards';
import { useDraft } from './drafts';
import { ExceptPlaces } from './except-places';
import { FormFoot } from './form-foot';
import { PanelHead } from './panel-head';
import { Caution } from './record-form';
import { TallySays } from './tally-says';
import { useTelling } from './use-telling';
import { ValueEntry } from './value-entry';
import { isTyped, onlyPlanned, sentValues, tallyOf } from './values';
import type { Typed } from './values';
import { useWork } from './work-context';

type Line = { readonly done: boolean; readonly except: readonly string[]; readonly typed: Typed };
type SignOffDraft = { readonly [operation: string]: Line };

/** What is due is taken as done unless the lead says otherwise; what still waits for other work is not. */
const emptyOf = (cards: readonly Card[]): SignOffDraft =>
  Object.fromEntries(
    cards.map((card) => [card.operation, { done: card.mark !== 'waiting', except: card.except, typed: {} }]),
  );

type LineProps = { readonly card: Card; readonly line: Line; readonly change: (part: Partial<Line>) => void };

/** Fills in what can only be one thing: yes, the size drawn, none. A measured value is never filled in for anyone. */
const AsPlanned = ({ card, line, change }: LineProps): ReactNode => {
  const { t } = useSpeech();
  const planned = card.values.filter(isTyped).flatMap((asked) => {
    const value = onlyPlanned(asked);
    return value === null ? [] : [[asked.characteristic, value] as const];
  });
  if (planned.length === 0) return null;
  return (
    <button
      type="button"
      className="button"
      onClick={() => change({ typed: { ...line.typed, ...Object.fromEntries(planned) } })}
    >
      {t('sign-off.as-planned', { count: planned.length })}
    </button>
  );
};

const SignOffLine = (props: LineProps): ReactNode => {
  const { t, say } = useSpeech();
  const { card, line, change } = props;
  return (
    <li className="sign-off-line stack tight">
      <div className="row spread">
        <h3 className="row">
          <Mark
            name={line.done ? (line.except.length > 0 ? 'open-at-places' : 'proven') : 'waiting'}
            size={28}
          />
          {say(card.name)}
        </h3>
        <div className="choices" role="group" aria-label={say(card.name)}>
          {[true, false].map((done) => (
            <button
              key={String(done)}
              type="button"
              className="button choice"
              aria-pressed={line.done === done}
              onClick={() => change({ done })}
            >
              {t(done ? 'sign-off.done' : 'sign-off.not-done')}
            </button>
          ))}
        </div>
      </div>
      {line.done && (
        <>
          <Caution card={card} />
          <AsPlanned {...props} />
          {card.values.filter(isTyped).map((asked) => (
            <ValueEntry
              key={asked.characteristic}
              asked={asked}
              typed={line.typed[asked.characteristic] ?? ''}
              change={(typed) => change({ typed: { ...line.typed, [asked.characteristic]: typed } })}
            />
          ))}
          <ExceptPlaces except={line.except} change={(except) => change({ except })} />
        </>
      )}
    </li>
  );
};

const bodyOf = (cards: readonly Card[], draft: SignOffDraft) => ({
  except: cards.flatMap(({ operation }) => {
    const line = draft[operation];
    if (line?.done !== true) return [{ operation, places: [] }];
    return line.except.length > 0 ? [{ operation, places: [...line.except] }] : [];
  }),
  values: cards.flatMap((card) => {
    const line = draft[card.operation];
    return line?.done === true
      ? sentValues(card, line.typed).map((value) => ({ ...value, operation: card.operation }))
      : [];
  }),
});

/** One signature for all the station owes this section: all as planned, except ... */
export const SignOffForm = (): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, close, told } = useWork();
  const telling = useTelling();
  const cards = openToSignOff(section);
  const { draft, change, forget } = useDraft<SignOffDraft>(
    `${section.serial}/${station.id}/sign-off`,
    emptyOf(cards),
  );
  const done = cards.filter(({ operation }) => draft[operation]?.done === true);
  const tally = tallyOf(done, ({ operation }) => draft[operation]?.typed ?? {});
  const submit = async (event: FormEvent): Promise<void> => {
    event.preventDefault();
    const result = await telling.send('signOff', {
      serial: section.serial,
      station: station.id,
      ...bodyOf(cards, draft),
    });
    if (result !== 'turned-down') forget();
    told(result, t('told.sign-off', { station: say(station.name) }));
  };
  return (
    <form className="panel-form stack" onSubmit={(event) => void submit(event)}>
      <PanelHead title={t('sign-off.title', { station: say(station.name) })} close={close} />
      <p>{t('sign-off.says')}</p>
      <ul className="stack">
        {cards.map((card) => {
          const line = draft[card.operation] ?? { done: false, except: [], typed: {} };
          return (
            <SignOffLine
              key={card.operation}
              card={card}
              line={line}
              change={(part) => change({ [card.operation]: { ...line, ...part } })}
            />
          );
        })}
      </ul>
      <FormFoot
        telling={telling}
        action={t('sign-off.sign', { done: done.length, all: cards.length })}
        ready={tally.unreadable === 0 && done.length > 0}
      >
        <TallySays tally={tally} />
      </FormFoot>
    </form>
  );
};
