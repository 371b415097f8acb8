import type { Envelope } from '@libs/kernel';

/** Where the columns of a row say that its event stands. */
export type Column = { readonly position: number; readonly version: number; readonly stream: string };

export const columnOf = (place: string): Column => {
  const first = place.indexOf(' ');
  const second = place.indexOf(' ', first + 1);
  return {
    position: Number(place.slice(0, first)),
    version: Number(place.slice(first + 1, second)),
    stream: place.slice(second + 1),
  };
};

/** Longer than all members behind `data` are; a longer end is read as a whole. */
const TAIL = 640;

/**
 * Whether the event says of itself what the columns say. In RFC 8785 order every member behind `data` is a plain value,
 * in which a quotation mark would be escaped: so these members are found from the end without parsing.
 */
export const saysTheSame = (body: Buffer, ledger: string, { position, version, stream }: Column): boolean => {
  const tail = body.toString('latin1', Math.max(0, body.length - TAIL));
  const end = `,"stream":"${stream}","version":${version},"via":"`;
  const at = tail.lastIndexOf(',"position":');
  const plain =
    at >= 0 &&
    tail.startsWith(`,"position":${position},"recordedAt":"`, at) &&
    tail.indexOf(end, at) === tail.lastIndexOf(',"stream":') &&
    tail.includes(`,"ledger":"${ledger}",`);
  return plain || saysTheSameParsed(body, ledger, { position, version, stream });
};

const saysTheSameParsed = (body: Buffer, ledger: string, column: Column): boolean => {
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
