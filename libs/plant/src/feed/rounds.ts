import { alarmClock } from './alarm-clock';
import type { Deliver } from './deliver';
import type { FeedGround } from './ground';
import { servingOf } from './serving';

/** What is told in a burst is looked over together: the charts are read once for all of it. */
const LOOK_EVERY_MS = 60_000;
/** A day comes near whether anything is told or not. */
const AT_LEAST_EVERY_MS = 60 * 60 * 1_000;

type Going = {
  readonly ground: FeedGround;
  readonly deliver: Deliver;
  readonly look: () => Promise<number>;
  readonly isOurs: () => Promise<boolean>;
  readonly trouble: (fault: unknown) => void;
  readonly byItself?: boolean | undefined;
};

export type Rounds = {
  readonly wake: () => void;
  /** What somebody wants has changed: it is looked over now, however lately it was. */
  readonly wakeToLook: () => void;
  readonly round: () => Promise<void>;
  readonly stop: () => Promise<void>;
};

export const rounds = ({ ground, deliver, look, isOurs, trouble, byItself = true }: Going): Rounds => {
  let lookedAt = -Infinity;
  let wanted = false;
  let running: Promise<void> = Promise.resolve();

  const startAll = async (): Promise<void> => {
    for (const { id } of await ground.rows.subscriptions()) void serving.start(id);
  };
  const goOn = async (lookNow: boolean): Promise<void> => {
    if (ground.isClosed() || !(await isOurs())) return;
    if (lookNow || ground.clock() - lookedAt >= LOOK_EVERY_MS) {
      lookedAt = ground.clock();
      await look();
    } else alarm.at(lookedAt + LOOK_EVERY_MS);
    await startAll();
    alarm.at(ground.clock() + AT_LEAST_EVERY_MS);
  };
  /** While a round goes on, what comes in asks for one more after it, however often it comes. */
  const wake = (): void => {
    if (!byItself || wanted || ground.isClosed()) return;
    wanted = true;
    running = running
      .then(() => {
        wanted = false;
        return goOn(false);
      })
      .catch(trouble);
  };
  const alarm = alarmClock(ground.clock, wake);
  const serving = servingOf(ground, deliver, { waitsUntil: alarm.at, trouble });
  const heard = ground.tail.heads.subscribe({ next: wake, error: trouble });
  wake();

  return {
    wake,
    wakeToLook: () => {
      lookedAt = -Infinity;
      wake();
    },
    round: async () => {
      await goOn(true);
      await serving.settled();
    },
    stop: async () => {
      heard.unsubscribe();
      alarm.stop();
      await running;
      await serving.settled();
    },
  };
};
