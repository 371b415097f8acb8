import type { Envelope } from '@libs/kernel';
import type { Column } from './event-pages';

/**
 * Whether the event that ends at `end` in this text says of itself what the columns say. In RFC 8785 order every member
 * behind `data` is a plain value, in which a quotation mark would be escaped: so these members are found from the end
 * without parsing. `text` has a letter for each byte; what that does not fit is read as a whole (`saysTheSameParsed`).
 */
export const saysTheSame = (
  text: string,
  end: number,
  ledger: string,
  { position, version, stream }: Column,
): boolean => {
  const via = text.lastIndexOf(',"via":"', end);
  const ends = `,"stream":"${stream}","version":${version}`;
  if (!text.startsWith(ends, via - ends.length)) return false;

  const at = text.lastIndexOf(',"position":', via);
  if (!text.startsWith(`${position},"recordedAt":"`, at + POSITION.length)) return false;
  return text.startsWith(`${ledger}","occurredAt":"`, text.lastIndexOf(',"ledger":"', at) + LEDGER.length);
};

const POSITION = ',"position":';
const LEDGER = ',"ledger":"';

export const saysTheSameParsed = (body: Buffer, ledger: string, column: Column): boolean => {
  const said = parsedOr(body);
  return (
    said?.ledger === ledger &&
    said.position === column.position &&
    said.version === column.version &&
    said.stream === column.stream
  );
};

/** What somebody put into the database may be no event at all. */
export const parsedOr = (body: Buffer): Partial<Envelope> | undefined => {
  try {
    return JSON.parse(body.toString()) as Partial<Envelope>;
  } catch {
    return undefined;
  }
};
