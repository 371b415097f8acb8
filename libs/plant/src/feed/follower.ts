import { randomUUID } from 'node:crypto';
import type { Envelope } from '@libs/kernel';
import { eventAsCloudEvent, isNoticeWanted, isWanted, noticeAsCloudEvent } from './cloud-event';
import type { CloudEvent } from './cloud-event';
import type { Deliver } from './deliver';
import type { FeedGround } from './ground';
import { isGivenUp, pauseAfter } from './pauses';
import type { Tried } from './post';
import type { Notice, Subscription } from './subscription';

/** Read at a time. What is not wanted moves the position on all the same. */
const PAGE = 200;

/** What is next, and where the subscription stands once it is done with. */
type Next = {
  readonly event: CloudEvent | null;
  readonly reached: Pick<Subscription, 'position' | 'notice'>;
};

/**
 * Serves one subscription, one delivery at a time, in the order of the ledger: the position is kept after the receiver
 * has taken it and never before, so that a crash in between leads to a second delivery and not to none.
 */
export const serve = async (ground: FeedGround, deliver: Deliver, id: string): Promise<number | null> => {
  for (;;) {
    const subscription = await ground.rows.subscription(id);
    if (subscription === undefined || subscription.state === 'gone' || ground.isClosed()) return null;
    if (subscription.nextAt > ground.clock()) return subscription.nextAt;

    const next = await nextOf(ground, subscription);
    if (next === null) return null;
    if (next.event === null) {
      await ground.rows.keep({ ...subscription, ...next.reached });
      continue;
    }
    const tried = await deliver(subscription, next.event);
    await ground.rows.keep(
      await afterTry(ground, subscription, { event: next.event, reached: next.reached, tried }),
    );
  }
};

const nextOf = async (ground: FeedGround, subscription: Subscription): Promise<Next | null> => {
  const page = await ground.tail.after(subscription.position, PAGE);
  if (page.length > 0) return fromLedger(ground, subscription, page);
  const notices = await ground.rows.noticesAfter(subscription.notice, PAGE);
  return notices.length > 0 ? fromNotices(ground, subscription, notices) : null;
};

const fromLedger = (
  { tail }: FeedGround,
  { wants, position, notice }: Subscription,
  page: readonly Envelope[],
): Next => {
  const wanted = page.find((event) => isWanted(wants, event));
  const reached = { position: (wanted ?? page.at(-1))?.position ?? position, notice };
  return {
    event: wanted === undefined ? null : eventAsCloudEvent(wanted, tail.names.ofRevision(wanted.revision)),
    reached,
  };
};

const fromNotices = (
  { tail }: FeedGround,
  { wants, position, notice }: Subscription,
  notices: readonly Notice[],
): Next => {
  const wanted = notices.find((one) => isNoticeWanted(wants, one));
  return {
    event: wanted === undefined ? null : noticeAsCloudEvent(wanted, tail.ledger),
    reached: { position, notice: (wanted ?? notices.at(-1))?.seq ?? notice },
  };
};

type Try = {
  readonly event: CloudEvent;
  readonly reached: Pick<Subscription, 'position' | 'notice'>;
  readonly tried: Tried;
};

const afterTry = async (
  ground: FeedGround,
  subscription: Subscription,
  { event, reached, tried }: Try,
): Promise<Subscription> => {
  const now = ground.clock();
  if (tried.ok)
    return { ...subscription, ...reached, tries: 0, failures: 0, nextAt: 0, trouble: null, deliveredAt: now };

  const { why, how } = tried;
  if (how === 'gone') return { ...subscription, state: 'gone', trouble: why };
  const tries = subscription.tries + 1;
  const failures = subscription.failures + 1;
  const waits = {
    ...subscription,
    tries,
    failures,
    trouble: why,
    nextAt: now + pauseAfter(failures, tried.waitMs),
  };
  if (!isGivenUp(tried, tries)) return waits;

  await ground.rows.bury({
    id: randomUUID(),
    subscription: subscription.id,
    message: event.id,
    type: event.type,
    subject: event.subject,
    body: JSON.stringify(event),
    why,
    tries,
    at: now,
  });
  return { ...waits, ...reached, tries: 0 };
};
