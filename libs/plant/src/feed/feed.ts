import { randomUUID } from 'node:crypto';
import { noticeId, testCloudEvent } from './cloud-event';
import type { CloudEvent } from './cloud-event';
import { deliverOver } from './deliver';
import type { Deliver } from './deliver';
import type { FeedGround } from './ground';
import { look } from './look';
import type { Noticing } from './look';
import { targetProblem } from './post';
import type { Tried } from './post';
import { rounds } from './rounds';
import type { DeadLetter, Notice, Subscription, Wants } from './subscription';

export type FeedWish = {
  readonly kind: Subscription['kind'];
  readonly target: string;
  readonly wants: Wants;
  readonly language: Subscription['language'];
  /** From the ledger's first event on, and not only what is told from now on. */
  readonly fromStart: boolean;
};
export type FeedRefusal = 'not-a-web-address' | 'own-network' | 'tls-needed' | 'no-mail-server';

export type Subscribed =
  /** `secret` is shown once, here; a letter has none. */
  | { readonly ok: true; readonly id: string; readonly secret: string | null }
  | { readonly ok: false; readonly why: FeedRefusal };

/** The plant's outgoing news. */
export type Feed = {
  /** Whether letters can be sent at all. */
  readonly hasMail: boolean;
  readonly subscriptions: () => Promise<readonly Subscription[]>;
  readonly letters: () => Promise<readonly DeadLetter[]>;
  readonly subscribe: (wish: FeedWish, by: string) => Promise<Subscribed>;
  readonly end: (id: string) => Promise<void>;
  /** One delivery that says nothing of the plant, at once and outside the order. */
  readonly test: (subscription: Subscription) => Promise<Tried>;
  /** Tries at once what waits, also where the receiver had said that it wants no more. */
  readonly tryNow: (id: string) => Promise<void>;
  /** Sends what was given up once more, under the id it had. Undefined: there is no such letter. */
  readonly sendAgain: (letter: string) => Promise<Tried | undefined>;
  readonly dropLetter: (letter: string) => Promise<void>;
  readonly noteCheckpoint: (made: {
    readonly size: number;
    readonly note: string;
    readonly sha256: string;
  }) => Promise<void>;
  /** Looks for news nobody told, and delivers all that is due; ends when nothing more is. */
  readonly round: () => Promise<void>;
  readonly close: () => Promise<void>;
};

export type FeedParts = Omit<FeedGround, 'isClosed'> & {
  readonly asks: Noticing;
  /** Of several servers on one ledger only its writer delivers. */
  readonly isOurs: () => Promise<boolean>;
  readonly trouble: (fault: unknown) => void;
  /** False: nothing happens but in `round`, for whoever keeps the time. */
  readonly byItself?: boolean;
};

export const openFeed = (parts: FeedParts): Feed => {
  let closed = false;
  const ground: FeedGround = { ...parts, isClosed: () => closed };
  const { rows, tail, clock } = ground;
  const deliver = deliverOver(ground);
  const going = rounds({ ...parts, ground, deliver, look: () => look(ground, parts.asks) });

  return {
    hasMail: parts.mail !== null,
    subscriptions: rows.subscriptions,
    ...givenUp(ground, deliver),
    subscribe: async (wish, by) => {
      const why = refusalOf(ground, wish);
      if (why !== null) return { ok: false, why };
      const id = randomUUID();
      const secret = wish.kind === 'url' ? ground.secrets.make(id) : null;
      await rows.put(subscriptionOf(wish, { id, by, at: clock(), ...(await startOf(ground, wish)) }));
      going.wakeToLook();
      return { ok: true, id, secret };
    },
    end: async (id) => {
      await rows.end(id);
      ground.secrets.forget(id);
    },
    test: (subscription) =>
      deliver(subscription, testCloudEvent(tail.ledger, randomUUID(), new Date(clock()).toISOString())),
    tryNow: async (id) => {
      const known = await rows.subscription(id);
      if (known !== undefined) await rows.keep({ ...known, state: 'on', nextAt: 0, tries: 0, failures: 0 });
      going.wake();
    },
    noteCheckpoint: async (made) => {
      await rows.note(checkpointNotice(ground, made));
      going.wake();
    },
    round: going.round,
    close: async () => {
      closed = true;
      await going.stop();
      await rows.close();
    },
  };
};

type GivenUp = Pick<Feed, 'letters' | 'sendAgain' | 'dropLetter'>;

const givenUp = ({ rows, clock }: FeedGround, deliver: Deliver): GivenUp => ({
  letters: rows.letters,
  sendAgain: async (id) => {
    const letter = await rows.letter(id);
    const to = letter === undefined ? undefined : await rows.subscription(letter.subscription);
    if (letter === undefined || to === undefined) return undefined;
    const tried = await deliver(to, eventIn(letter));
    if (tried.ok) await rows.dropLetter(id);
    else await rows.bury({ ...letter, why: tried.why, tries: letter.tries + 1, at: clock() });
    return tried;
  },
  dropLetter: rows.dropLetter,
});

type Checkpoint = Parameters<Feed['noteCheckpoint']>[0];

const checkpointNotice = (
  { tail, clock }: FeedGround,
  { size, note, sha256 }: Checkpoint,
): Omit<Notice, 'seq'> => {
  const says = {
    en: `Checkpoint over ${String(size)} events.`,
    es: `Punto de control sobre ${String(size)} sucesos.`,
  };
  return {
    id: noticeId(tail.ledger, 'checkpoint', String(size), sha256),
    kind: 'checkpoint',
    subject: String(size),
    at: new Date(clock()).toISOString(),
    data: JSON.stringify({ size, note, sha256, says }),
  };
};

const refusalOf = ({ reach, mail }: FeedGround, { kind, target }: FeedWish): FeedRefusal | null => {
  if (kind === 'mail') return mail === null ? 'no-mail-server' : null;
  return targetProblem(target, reach);
};

const startOf = async (
  { tail, rows }: FeedGround,
  { fromStart }: FeedWish,
): Promise<Pick<Subscription, 'position' | 'notice'>> =>
  fromStart ? { position: 0, notice: 0 } : { position: await tail.head(), notice: await rows.lastNotice() };

const subscriptionOf = (
  { kind, target, wants, language }: FeedWish,
  made: Pick<Subscription, 'id' | 'position' | 'notice'> & { readonly by: string; readonly at: number },
): Subscription => ({
  id: made.id,
  kind,
  target,
  wants,
  language,
  madeBy: made.by,
  madeAt: made.at,
  state: 'on',
  position: made.position,
  notice: made.notice,
  tries: 0,
  failures: 0,
  nextAt: 0,
  trouble: null,
  deliveredAt: null,
});

/** Written by the follower. */
const eventIn = ({ body }: DeadLetter): CloudEvent => JSON.parse(body) as CloudEvent;
