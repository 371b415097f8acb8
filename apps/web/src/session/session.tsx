import { createContext, useCallback, useContext, useEffect, useMemo, useState } from 'react';
import type { ReactNode } from 'react';
import { ask, onReach, onSignedOut } from '../api/client';
import { tellAs } from '../api/outbox';
import { dropFact, keepFact, keptFact } from '../queue/store';
import type { Me, PlantFacts } from './facts';

export type { Me, PlantFacts } from './facts';

export type Session = {
  /** `asking` until the server has said who we are; `unreachable` while it says nothing. `set-up`: nobody may come in yet. */
  readonly state: 'asking' | 'unreachable' | 'set-up' | 'signed-out' | 'signed-in';
  readonly me: Me | null;
  readonly plant: PlantFacts | null;
  /** Nobody answers: shown and judged is what this device kept. */
  readonly cutOff: boolean;
  readonly renew: () => Promise<void>;
  /** Whoever was here has left, and said so. */
  readonly forget: () => Promise<void>;
};

const SessionContext = createContext<Session | null>(null);

export const useSession = (): Session => {
  const session = useContext(SessionContext);
  if (session === null) throw new Error('useSession is used outside SessionProvider');
  return session;
};

/** For screens that only exist for someone signed in, at a plant that is known. */
export const useSignedIn = (): { readonly me: Me; readonly plant: PlantFacts } => {
  const { me, plant } = useSession();
  if (me === null || plant === null) throw new Error('useSignedIn is used before anyone signed in');
  return { me, plant };
};

type Known = Pick<Session, 'state' | 'me' | 'plant' | 'cutOff'>;
const NOBODY: Known = { state: 'asking', me: null, plant: null, cutOff: false };
const ME = 'me';
const PLANT = 'plant';

/** Who was signed in when the network went is taken at their word until it is back; the server asks again then. */
const asKept = async (): Promise<Known> => {
  const [me, plant] = await Promise.all([keptFact<Me>(ME), keptFact<PlantFacts>(PLANT)]);
  return me === undefined || plant === undefined
    ? { ...NOBODY, state: 'unreachable' }
    : { state: 'signed-in', me, plant, cutOff: true };
};

const whoAndWhere = async (): Promise<Known> => {
  const [me, plant] = await Promise.all([ask('me'), ask('plant')]);
  if (me.ok && plant.ok) {
    await Promise.all([keepFact(ME, me.answer), keepFact(PLANT, plant.answer)]);
    return { state: 'signed-in', me: me.answer, plant: plant.answer, cutOff: false };
  }
  const unreachable = [me, plant].some((result) => !result.ok && result.trouble.kind === 'unreachable');
  if (unreachable) return asKept();
  await dropFact(ME);
  const setup = await ask('setup');
  return { ...NOBODY, state: setup.ok && setup.answer.needed ? 'set-up' : 'signed-out' };
};

export const SessionProvider = ({ children }: { readonly children: ReactNode }): ReactNode => {
  const [known, setKnown] = useState<Known>(NOBODY);
  const renew = useCallback(async () => {
    const next = await whoAndWhere();
    tellAs(next.me?.actor ?? null);
    setKnown(next);
  }, []);
  const forget = useCallback(async () => {
    await dropFact(ME);
    tellAs(null);
    setKnown({ ...NOBODY, state: 'signed-out' });
  }, []);
  useEffect(() => void renew(), [renew]);
  // What is on the screen goes with whoever was signed in; their drafts and their unsent entries wait for them.
  useEffect(() => onSignedOut(() => void forget()), [forget]);
  useEffect(
    () =>
      onReach((reached) =>
        setKnown((before) =>
          before.state !== 'signed-in' || before.cutOff === !reached
            ? before
            : { ...before, cutOff: !reached },
        ),
      ),
    [],
  );
  const session = useMemo<Session>(() => ({ ...known, renew, forget }), [known, renew, forget]);
  return <SessionContext value={session}>{children}</SessionContext>;
};

const DECIDERS = ['quality-manager', 'inspector', 'administrator'];
/** May release holds and say "seen before cover". The server decides; this only spares a useless tap. */
export const mayDecide = (me: Me): boolean => me.roles.some((role) => DECIDERS.includes(role));
export const isQualityManager = (me: Me): boolean => me.roles.includes('quality-manager');

const STATION_KEPT_AS = 'studbook.station';
/** A tablet stays at its station: the last one chosen on this device. */
export const homeStation = (): string | null => localStorage.getItem(STATION_KEPT_AS);
export const settleAt = (station: string): void => localStorage.setItem(STATION_KEPT_AS, station);
