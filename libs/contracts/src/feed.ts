import { z } from 'zod';
import { Instant, Words } from './shapes';

/** Events of the record that a subscriber wants, by name; `all`: every one that may leave the plant. */
const Wants = z.strictObject({
  events: z.union([
    z.literal('all'),
    z.array(z.string().regex(/^[A-Z][A-Za-z]{2,60}$/, 'is no name of an event')).max(100),
  ]),
  alarms: z.boolean().describe('Alarms opened by the quality charts'),
  checkpoints: z.boolean().describe('Signed checkpoints as they are made'),
  clocks: z.boolean().describe('Days of determination files that are near'),
});

export const FeedSubscription = z.object({
  id: z.string(),
  kind: z.enum(['url', 'mail']),
  target: z.string(),
  wants: Wants,
  by: z.string().describe('Who made it: a name where one is known'),
  madeAt: Instant,
  standing: z.enum(['up-to-date', 'behind', 'failing', 'gone']),
  behind: z.number().int().describe('Events of the ledger not looked at for it yet'),
  deliveredAt: Instant.nullable(),
  nextAt: Instant.nullable().describe('When it is tried again, where it fails'),
  trouble: z.string().nullable().describe('Code of the last failure'),
});
export const FeedLetter = z.object({
  id: z.string(),
  subscription: z.string(),
  target: z.string(),
  type: z.string(),
  subject: z.string(),
  says: Words,
  why: z.string(),
  tries: z.number().int(),
  at: Instant,
});
export const FeedAnswer = z.object({
  hasMail: z.boolean().describe('Whether a mail server is set'),
  subscriptions: z.array(FeedSubscription),
  letters: z.array(FeedLetter).describe('What was given up, latest first'),
});
export const FeedRequest = z
  .strictObject({
    kind: z.enum(['url', 'mail']),
    target: z.string().trim().min(3).max(2000),
    wants: Wants,
    language: z.enum(['en', 'es']).default('en').describe('Of letters'),
    fromStart: z.boolean().default(false).describe('From the first event on, not only from now on'),
  })
  .refine(({ kind, target }) => kind === 'url' || /^[^\s@,;<>"]+@[^\s@,;<>"]+$/.test(target), {
    path: ['target'],
    message: 'is no mail address',
  })
  .refine(({ kind, wants }) => kind === 'url' || (wants.events !== 'all' && wants.events.length === 0), {
    path: ['wants', 'events'],
    message: 'letters carry alarms, checkpoints and near days, not events: subscribe a web address to those',
  })
  .refine(
    ({ wants: { events, alarms, checkpoints, clocks } }) =>
      events.length > 0 || alarms || checkpoints || clocks,
    {
      path: ['wants'],
      message: 'is empty: nothing would be sent',
    },
  );
/** `secret` is shown only here; null for letters. */
export const FeedSubscribedAnswer = z.object({ subscription: z.string(), secret: z.string().nullable() });
export const FeedTried = z.object({ delivered: z.boolean(), why: z.string().nullable() });
