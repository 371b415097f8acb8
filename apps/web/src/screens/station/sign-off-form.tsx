import type { ReactNode, SyntheticEvent } from 'react';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useSpeech } from '../../words/words';
import { openToSignOff } from './cards';
import type { Card } from './cards';
import { useDraft } from './drafts';
import { ExceptPlaces } from './except-places';
import { FormFoot } from './form-foot';
import { PanelHead } from './panel-head';
import { PhotoEntry } from '../../ui/photo-entry';
import { Caution } from './record-form';
import { TallySays } from './tally-says';
import { useTelling } from './use-telling';
import { ValueEntry } from './value-entry';
import { isTyped, onlyPlanned, sentValues, tallyOf } from './values';
import type { Typed } from './values';
import { useWork } from './work-context';

type Line = { readonly done: boolean; readonly except: readonly string[]; readonly typed: Typed };
type SignOffDraft = { readonly [operation: string]: Line };

/**
 * What is due, of the lead's own crew and without values to measure is taken as done unless the lead says otherwise.
 * Another crew's work, and what asks for a value nobody has entered, is marked by hand.
 */
const emptyOf = (cards: readonly Card[], crew: string | null): SignOffDraft => {
  const isOwn = (card: Card): boolean => crew === null || card.crew === crew;
  const asksNothing = (card: Card): boolean =>
    !card.values.some((asked) => isTyped(asked) && asked.asked === 'always' && onlyPlanned(asked) === null);
  return Object.fromEntries(
    cards.map((card) => [
      card.operation,
      {
        done: card.mark !== 'waiting' && isOwn(card) && asksNothing(card),
        except: card.except,
        typed: {},
      },
    ]),
  );
};

type LineProps = { readonly card: Card; readonly line: Line; readonly change: (part: Partial<Line>) => void };

/** What can only be one thing: yes, the size drawn, none. A measured value is never filled in for anyone. */
const fixedByPlan = (card: Card): Typed =>
  Object.fromEntries(
    card.values.filter(isTyped).flatMap((asked) => {
      const value = onlyPlanned(asked);
      return value === null ? [] : [[asked.characteristic, value] as const];
    }),
  );

type AsPlannedProps = {
  readonly cards: readonly Card[];
  readonly draft: SignOffDraft;
  readonly change: (part: SignOffDraft) => void;
};

/** One tap says "as planned" for all that is marked done; what differs is then put in by hand. */
const AsPlanned = ({ cards, draft, change }: AsPlannedProps): ReactNode => {
  const { t } = useSpeech();
  const count = cards.reduce((sum, card) => sum + Object.keys(fixedByPlan(card)).length, 0);
  if (count === 0) return null;
  const fill = (): void =>
    change(
      Object.fromEntries(
        cards.flatMap((card) => {
          const line = draft[card.operation];
          return line === undefined
            ? []
            : [[card.operation, { ...line, typed: { ...fixedByPlan(card), ...line.typed } }] as const];
        }),
      ),
    );
  return (
    <button type="button" className="button big" onClick={fill}>
      {t('sign-off.as-planned', { count })}
    </button>
  );
};

const SignOffLine = ({ card, line, change }: LineProps): ReactNode => {
  const { t, say } = useSpeech();
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
      {(line.done || card.mark !== 'waiting') && (
        <>
          <Caution card={card} />
          {card.values.filter(isTyped).map((asked) => (
            <ValueEntry
              key={asked.characteristic}
              asked={asked}
              typed={line.typed[asked.characteristic] ?? ''}
              change={(typed) =>
                change({ done: true, typed: { ...line.typed, [asked.characteristic]: typed } })
              }
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

type Photos = { readonly photos: readonly string[] };
const NO_PHOTOS: Photos = { photos: [] };

/** One signature for all the station owes this section: all as planned, except ... */
export const SignOffForm = (): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, close, told } = useWork();
  const { me } = useSignedIn();
  const telling = useTelling();
  const cards = openToSignOff(section);
  const { draft, change, forget } = useDraft<SignOffDraft>(
    `${section.serial}/${station.id}/sign-off`,
    emptyOf(cards, me.crew),
  );
  const {
    draft: kept,
    change: keep,
    forget: forgetPhotos,
  } = useDraft<Photos>(`${section.serial}/${station.id}/sign-off-photos`, NO_PHOTOS);
  const done = cards.filter(({ operation }) => draft[operation]?.done === true);
  const tally = tallyOf(done, ({ operation }) => draft[operation]?.typed ?? {});
  const submit = async (event: SyntheticEvent): Promise<void> => {
    event.preventDefault();
    const result = await telling.send('signOff', {
      serial: section.serial,
      station: station.id,
      ...bodyOf(cards, draft),
      photos: [...kept.photos],
    });
    if (result !== 'turned-down') {
      forget();
      forgetPhotos();
    }
    told(result, t('told.sign-off', { station: say(station.name) }));
  };
  return (
    <form className="panel-form stack" onSubmit={(event) => void submit(event)}>
      <PanelHead title={t('sign-off.title', { station: say(station.name) })} close={close} />
      <p>{t('sign-off.says')}</p>
      <AsPlanned cards={done} draft={draft} change={change} />
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
      {done.some(({ photo }) => photo !== 'none') && (
        <PhotoEntry
          photos={kept.photos}
          needed={done.some(({ photo }) => photo === 'always')}
          change={(photos) => keep({ photos })}
        />
      )}
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
