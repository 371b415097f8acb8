import { useState } from 'react';
import type { ReactNode } from 'react';
import { mayFind, mayTell } from '../../session/may';
import { useSignedIn } from '../../session/session';
import { TroubleNotice } from '../../ui/trouble';
import { named } from '../../words/named';
import { useSpeech } from '../../words/words';
import { nextFor, nextStation } from './cards';
import { recordPanel } from './panel';
import type { Next } from './cards';
import { useTelling } from './use-telling';
import type { Telling } from './use-telling';
import { useWork } from './work-context';

/** Moves of the section itself: they need no form. */
const useMoves = (telling: Telling) => {
  const { t, say } = useSpeech();
  const { section, station, told } = useWork();
  const { plant } = useSignedIn();
  const at = { serial: section.serial, station: station.id };
  const nameOf = (id: string): string => say(named(plant.stations, id));
  return {
    start: async () =>
      told(
        await telling.send('start', { ...at, at: station.id }),
        t('told.started', { station: nameOf(station.id) }),
      ),
    comeBack: async () =>
      told(
        await telling.send('return', { ...at, to: station.id }),
        t('told.returned', { station: nameOf(station.id) }),
      ),
    move: async (to: string) =>
      told(await telling.send('move', { ...at, to }), t('told.moved', { station: nameOf(to) })),
    ship: async () => told(await telling.send('shipment', at), t('told.shipped')),
  };
};
type Moves = ReturnType<typeof useMoves>;

type Offer = { readonly word: string; readonly act: () => void };

/** What becomes of the section itself, where nothing on the list comes first. */
const useMoveOffer = (moves: Moves): ((next: Next) => Offer | null) => {
  const { t, say } = useSpeech();
  const { station } = useWork();
  const here = say(station.name);
  return (next) => {
    switch (next.do) {
      case 'start':
        return { word: t('action.start', { station: here }), act: () => void moves.start() };
      case 'return':
        return { word: t('action.return', { station: here }), act: () => void moves.comeBack() };
      case 'move-here':
        return { word: t('action.move', { station: here }), act: () => void moves.move(station.id) };
      case 'move-on':
        return {
          word: t('action.move-on', { station: say(next.to.name) }),
          act: () => void moves.move(next.to.id),
        };
      case 'ship':
        return { word: t('action.ship'), act: () => void moves.ship() };
      default:
        return null;
    }
  };
};

const useOffer = (moves: Moves): ((next: Next) => Offer | null) => {
  const { t, say } = useSpeech();
  const { station, show, mayI } = useWork();
  const moveOffer = useMoveOffer(moves);
  return (next) => {
    switch (next.do) {
      case 'sign-off':
        return {
          word: t('action.sign-off', { station: say(station.name) }),
          act: () => show({ show: 'sign-off' }),
        };
      case 'ask':
        return {
          word: t(next.card.cover ? 'action.ask-cover' : 'action.ask', { work: say(next.card.name) }),
          act: () => mayI(next.card),
        };
      case 'record':
        return {
          word: t('action.record', { work: say(next.card.name) }),
          act: () => show(recordPanel(next.card)),
        };
      default:
        return moveOffer(next);
    }
  };
};

const MoreActions = ({ moves, busy }: { readonly moves: Moves; readonly busy: boolean }): ReactNode => {
  const { t, say } = useSpeech();
  const { section, station, show } = useWork();
  const { plant, me } = useSignedIn();
  const tells = mayTell(me);
  const to =
    tells && section.stage === 'on-line' && section.station === station.id
      ? nextStation(plant.stations, station.id)
      : null;
  return (
    <div className="choices more-actions">
      {to !== null && (
        <button type="button" className="button" disabled={busy} onClick={() => void moves.move(to.id)}>
          {t('action.move-on', { station: say(to.name) })}
        </button>
      )}
      {tells && station.lotKinds.length > 0 && (
        <button type="button" className="button" onClick={() => show({ show: 'lot' })}>
          {t('action.lot')}
        </button>
      )}
      <button type="button" className="button" onClick={() => show({ show: 'hold' })}>
        {t('action.hold')}
      </button>
      {tells && section.stage === 'on-line' && (
        <button type="button" className="button" onClick={() => show({ show: 'pull' })}>
          {t('action.pull')}
        </button>
      )}
    </div>
  );
};

/** In reach of a thumb: the one thing most likely wanted now, a defect, and the rest behind one tap. */
export const ActionBar = ({ cleared }: { readonly cleared: ReadonlySet<string> }): ReactNode => {
  const { t } = useSpeech();
  const { section, station, show, asking } = useWork();
  const { plant, me } = useSignedIn();
  const telling = useTelling();
  const moves = useMoves(telling);
  const [more, setMore] = useState(false);
  const offerFor = useOffer(moves);
  const offer = mayTell(me) ? offerFor(nextFor(section, station, plant.stations, cleared)) : null;
  if (!mayFind(me)) return null;
  return (
    <div className="action-bar no-print">
      {telling.trouble !== null && <TroubleNotice trouble={telling.trouble} />}
      {more && <MoreActions moves={moves} busy={telling.busy} />}
      <div className="action-main">
        {offer !== null && (
          <button
            type="button"
            className="button primary big action-offer"
            disabled={telling.busy || asking}
            onClick={offer.act}
          >
            {offer.word}
          </button>
        )}
        <button type="button" className="button big" onClick={() => show({ show: 'defect' })}>
          {t('action.defect')}
        </button>
        <button type="button" className="button big" aria-expanded={more} onClick={() => setMore(!more)}>
          {t('action.more')}
        </button>
      </div>
    </div>
  );
};
