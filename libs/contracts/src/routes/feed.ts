import { Done, NoBody } from '../access';
import { FeedAnswer, FeedRequest, FeedSubscribedAnswer, FeedTried } from '../feed';
import { get, tell } from './route';

const administrators = { access: ['administrator'] } as const;
/** A quality manager has alarms and near days sent; everything else is the administrator's. */
const subscribers = { access: ['administrator', 'quality-manager'] } as const;

/** The plant's outgoing news: who is sent what, and what could not be delivered. */
export const feedRoutes = {
  feed: get('/api/feed', "Who is sent the plant's news, and what was given up", FeedAnswer, subscribers),
  feedSubscription: tell(
    '/api/feed/subscriptions',
    'Have news sent to a web address (CloudEvents, signed by Standard Webhooks) or by mail',
    { body: FeedRequest, answer: FeedSubscribedAnswer },
    { ...subscribers, keyed: false },
  ),
  feedEnd: tell(
    '/api/feed/subscriptions/{subscription}/end',
    'End a subscription; its secret is forgotten',
    { body: NoBody, answer: Done },
    { ...subscribers, keyed: false, status: 200 },
  ),
  feedTest: tell(
    '/api/feed/subscriptions/{subscription}/test',
    'Send a test that says nothing of the plant',
    { body: NoBody, answer: FeedTried },
    { ...subscribers, keyed: false, status: 200 },
  ),
  feedTryNow: tell(
    '/api/feed/subscriptions/{subscription}/try-now',
    'Try at once what waits for its next try',
    { body: NoBody, answer: Done },
    { ...subscribers, keyed: false, status: 200 },
  ),
  feedSendAgain: tell(
    '/api/feed/letters/{letter}/send-again',
    'Send what was given up once more, under the id it had',
    { body: NoBody, answer: FeedTried },
    { ...administrators, keyed: false, status: 200 },
  ),
  feedDrop: tell(
    '/api/feed/letters/{letter}/drop',
    'Take what was given up off the list',
    { body: NoBody, answer: Done },
    { ...administrators, keyed: false, status: 200 },
  ),
} as const;
