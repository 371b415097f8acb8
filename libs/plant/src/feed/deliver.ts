import type { CloudEvent } from './cloud-event';
import type { FeedGround } from './ground';
import { post } from './post';
import type { Tried } from './post';
import { signedHeaders } from './signature';
import type { Subscription } from './subscription';

export type Deliver = (
  subscription: Pick<Subscription, 'id' | 'kind' | 'target' | 'language'>,
  event: CloudEvent,
) => Promise<Tried>;

/** One try of one delivery, by the road the subscriber wants. */
export const deliverOver =
  ({ secrets, reach, mail, clock }: Pick<FeedGround, 'secrets' | 'reach' | 'mail' | 'clock'>): Deliver =>
  async ({ id, kind, target, language }, event) => {
    if (kind === 'mail') {
      return mail === null
        ? { ok: false, how: 'unreachable', why: 'no-mail-server' }
        : mail.send({ to: target, event, language });
    }
    const secret = secrets.of(id);
    if (secret === null) return { ok: false, how: 'unreachable', why: 'secret-missing' };

    const body = JSON.stringify(event);
    const message = { id: event.id, timestamp: Math.floor(clock() / 1_000), body };
    return post({ url: target, body, headers: signedHeaders(message, secret) }, reach);
  };
