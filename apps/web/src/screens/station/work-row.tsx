import { useState } from 'react';
import type { ReactNode } from 'react';
import { mayTell } from '../../session/may';
import { useSignedIn } from '../../session/session';
import { Mark } from '../../ui/mark';
import { useTimes } from '../../words/use-times';
import { useSpeech } from '../../words/words';
import type { Card } from './cards';
import { isAsked, isOpen, isSignedWithStation } from './cards';
import { recordPanel } from './panel';
import { named } from '../../words/named';
import { asRead } from '../../ui/metric';
import { SourceSays } from '../../ui/source-says';
import { Caution } from './record-form';
import { useWork } from './work-context';

const MARK_WORDS = {
  proven: 'mark.proven',
  covered: 'mark.covered',
  'open-at-places': 'mark.open-at-places',
  due: 'mark.due',
  waiting: 'mark.waiting',
  held: 'mark.held',
} as const;

/** The list's own heading has said it: the word need not stand in every row. */
const saidByHeading = ({ mark, station }: Card, here: string): boolean =>
  station === here && (mark === 'due' || mark === 'proven');

/** What an open row says of itself besides its mark: where it is open, what it waits for, what it asks for. */
const useOpenSays = (card: Card): readonly string[] => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  if (!isOpen(card)) return [];
  const placeName = (id: string): string => say(named(plant.places, id));
  const asked = card.values.filter(({ from, kind }) => from === 'entry' && kind !== 'derived').length;
  const waits = card.mark === 'waiting' ? card.waitsFor : [];
  return [
    ...(card.except.length > 0 ? [t('row.open-at', { places: card.except.map(placeName).join(', ') })] : []),
    ...(waits.length > 0
      ? [t('row.waits-for', { work: waits.map(({ name }) => say(name)).join(', ') })]
      : []),
    ...(asked > 0 ? [t('row.values', { count: asked })] : []),
    ...(card.photo === 'always' ? [t('row.photo')] : []),
  ];
};

const useSub = (card: Card): string => {
  const { t, say } = useSpeech();
  const { plant } = useSignedIn();
  const { station } = useWork();
  return [
    ...(saidByHeading(card, station.id) ? [] : [t(MARK_WORDS[card.mark])]),
    ...(card.station === station.id ? [] : [say(named(plant.stations, card.station))]),
    ...useOpenSays(card),
    t('row.crew', { crew: say(named(plant.crews, card.crew)) }),
  ].join(' · ');
};

const Required = ({ card }: { readonly card: Card }): ReactNode => {
  const { t, say } = useSpeech();
  if (card.values.length === 0) return null;
  const recorded = (characteristic: string): string =>
    (card.done?.values ?? [])
      .filter((value) => value.characteristic === characteristic)
      .map(({ value, unit }) => asRead(value, unit))
      .join(', ');
  return (
    <ul className="required">
      {card.values.map((asked) => (
        <li key={asked.characteristic}>
          <p>
            <strong>{say(asked.label)}</strong>: {say(asked.requiredSays)}
            {asked.from !== 'entry' && <span className="quiet"> · {t('row.from-lot')}</span>}
            {card.done !== null && (
              <span className="mono">
                {' '}
                · {t('row.recorded', { value: recorded(asked.characteristic) || '–' })}
              </span>
            )}
          </p>
          <SourceSays source={asked.source} />
        </li>
      ))}
    </ul>
  );
};

const Done = ({ card }: { readonly card: Card }): ReactNode => {
  const { t } = useSpeech();
  const times = useTimes();
  if (card.done === null) return null;
  return <p>{t('row.done', { by: card.done.by, at: times.moment(card.done.at), proof: card.done.proof })}</p>;
};

const Actions = ({ card }: { readonly card: Card }): ReactNode => {
  const { t } = useSpeech();
  const { show, mayI, asking } = useWork();
  const { me } = useSignedIn();
  if (!mayTell(me)) return null;
  return (
    <div className="choices">
      {isAsked(card) && isOpen(card) && (
        <button type="button" className="button" disabled={asking} onClick={() => mayI(card)}>
          {t(card.cover ? 'ask.cover' : 'ask.go-on')}
        </button>
      )}
      {isOpen(card) && (
        <button type="button" className="button" onClick={() => show(recordPanel(card))}>
          {t('row.record')}
        </button>
      )}
      {card.done !== null && (
        <>
          <button type="button" className="button" onClick={() => show({ show: 'correct', card })}>
            {t('undo.values')}
          </button>
          <button type="button" className="button" onClick={() => show({ show: 'wrong-serial', card })}>
            {t('undo.serial')}
          </button>
          {card.cover && (
            <button type="button" className="button" onClick={() => show({ show: 'laid-open', card })}>
              {t('row.laid-open')}
            </button>
          )}
        </>
      )}
    </div>
  );
};

const Detail = ({ card, id }: { readonly card: Card; readonly id: string }): ReactNode => {
  const { t, say } = useSpeech();
  return (
    <div className="work-detail stack" id={id}>
      <Caution card={card} />
      {card.hides.length > 0 && (
        <div className="hides">
          <p className="field-name">{t('row.hides')}</p>
          <p>{card.hides.map(({ name }) => say(name)).join(' · ')}</p>
        </div>
      )}
      <Done card={card} />
      <Required card={card} />
      <Actions card={card} />
    </div>
  );
};

/** The one tap a due row offers without being opened: asking for a cover or a gate, signing a test or an inspection. */
const Quick = ({ card }: { readonly card: Card }): ReactNode => {
  const { t, say } = useSpeech();
  const { show, mayI, asking } = useWork();
  const { me } = useSignedIn();
  if (!mayTell(me) || !isOpen(card) || card.mark === 'held') return null;
  if (isAsked(card))
    return (
      <button
        type="button"
        className="button work-quick"
        disabled={asking}
        onClick={() => mayI(card)}
        aria-label={`${t(card.cover ? 'ask.cover' : 'ask.go-on')} ${say(card.name)}`}
      >
        {t(card.cover ? 'ask.cover' : 'ask.go-on')}
      </button>
    );
  if (isSignedWithStation(card) || card.mark === 'waiting') return null;
  return (
    <button
      type="button"
      className="button work-quick"
      onClick={() => show(recordPanel(card))}
      aria-label={`${t('row.sign')} ${say(card.name)}`}
    >
      {t('row.sign')}
    </button>
  );
};

export const WorkRow = ({ card }: { readonly card: Card }): ReactNode => {
  const { say } = useSpeech();
  const [open, setOpen] = useState(false);
  const id = `work-${card.operation}`;
  return (
    <li className={`work ${card.mark}`}>
      <div className="work-line">
        <button
          type="button"
          className="work-row"
          aria-expanded={open}
          aria-controls={id}
          onClick={() => setOpen(!open)}
        >
          <Mark name={card.mark} size={32} />
          <span className="work-words">
            <span className="work-name">{say(card.name)}</span>
            <span className="work-sub">{useSub(card)}</span>
          </span>
        </button>
        <Quick card={card} />
      </div>
      {open && <Detail card={card} id={id} />}
    </li>
  );
};
