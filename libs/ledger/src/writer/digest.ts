import { createHmac } from 'node:crypto';

/**
 * Compares what was sent under one key without keeping it: content may hold a name or a note in clear,
 * and a plain hash of a short text can be guessed. Hence an HMAC, under a key kept apart from the database.
 */
export const digestOf = (secret: Buffer, content: string): Buffer =>
  createHmac('sha256', secret).update(content).digest();
