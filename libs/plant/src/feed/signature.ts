import { createHmac, randomBytes } from 'node:crypto';

/** Standard Webhooks 1.0.0: 24 to 64 random bytes behind this prefix. */
const PREFIX = 'whsec_';
const SECRET_BYTES = 32;

export const newSecret = (): string => PREFIX + randomBytes(SECRET_BYTES).toString('base64');

export type Message = { readonly id: string; readonly timestamp: number; readonly body: string };

/** `v1,` and the HMAC-SHA256 of id, time and raw body: the receiver makes the same and compares. */
export const signatureOf = ({ id, timestamp, body }: Message, secret: string): string => {
  const key = Buffer.from(secret.slice(PREFIX.length), 'base64');
  const signed = `${id}.${String(timestamp)}.${body}`;
  return `v1,${createHmac('sha256', key).update(signed, 'utf8').digest('base64')}`;
};

/** The id stays the same with every try, the time does not: a receiver drops what it has, and what is too old. */
export const signedHeaders = (message: Message, secret: string): { readonly [header: string]: string } => ({
  'webhook-id': message.id,
  'webhook-timestamp': String(message.timestamp),
  'webhook-signature': signatureOf(message, secret),
});
