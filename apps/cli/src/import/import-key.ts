import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';

/** SHA-256 of the whole file, hex: the same file is known again, whatever it is called. */
export const fileDigest = async (file: string): Promise<string> => {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file) as AsyncIterable<Buffer>) hash.update(chunk);
  return hash.digest('hex');
};

/** A row leads to so many tellings at most. */
const PARTS = 4_096;

/**
 * The idempotency key of one telling of one row (UUIDv8, RFC 9562). Made from the file and the row alone, so that an
 * import begun again says nothing twice; the row's number leads after the file's mark, so that keys ascend and the
 * key index stays warm.
 */
export const importKey = (digest: string, line: number, part: number): string => {
  const row = line.toString(16).padStart(7, '0');
  const variant = (0x8000 + (part % PARTS)).toString(16);
  return `${digest.slice(0, 8)}-${row.slice(0, 4)}-8${row.slice(4, 7)}-${variant}-${digest.slice(8, 20)}`;
};
