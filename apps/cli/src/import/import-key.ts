import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';

/** SHA-256 of the whole file, hex: the same file is known again, whatever it is called. */
export const fileDigest = async (file: string): Promise<string> => {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file) as AsyncIterable<Buffer>) hash.update(chunk);
  return hash.digest('hex');
};

/** What a row is known by: when it happened, roughly, and what it says. */
export type RowMark = { readonly when: string; readonly says: string };

/** Hex digits of a key that say when, and that say what. */
const WHEN_DIGITS = 12;
const SAYS_DIGITS = 15;
/** A row leads to so many tellings at most. */
const PARTS = 4_096;

/**
 * Marks the rows of one file, read from its beginning. Two rows that say exactly the same are the first and the second
 * of their kind; a longer export of the same log, or part of it, gives its rows the marks they had.
 */
export const rowMarks = (): ((text: string, time: string) => RowMark) => {
  const seen = new Map<string, number>();
  return (text, time) => {
    const digest = createHash('sha256').update(text).digest('base64');
    const before = seen.get(digest) ?? 0;
    seen.set(digest, before + 1);
    return {
      when: time.replace(/\D/g, '').slice(0, WHEN_DIGITS).padEnd(WHEN_DIGITS, '0'),
      says: createHash('sha256').update(`${digest} ${before}`).digest('hex').slice(0, SAYS_DIGITS),
    };
  };
};

/**
 * The idempotency key of one telling of one row (UUIDv8, RFC 9562): made from the row alone, so that an import begun
 * again says nothing twice. The digits of its time lead, so that a log in order finds the key index warm.
 */
export const importKey = ({ when, says }: RowMark, part: number): string => {
  const variant = (0x8000 + (part % PARTS)).toString(16);
  return `${when.slice(0, 8)}-${when.slice(8)}-8${says.slice(0, 3)}-${variant}-${says.slice(3)}`;
};
