import { orientationIn, orientedExif } from './exif';

/**
 * A JPEG (ITU-T T.81) from its first marker to its end marker, without the segments in which cameras and programs put
 * place, time, serial numbers, thumbnails and texts (APPn, COM). What decoding needs stays: JFIF, Adobe's colour
 * transform, the colour profile, and which way up it is. Undefined: it is cut short or no JPEG at all.
 */
export const cleanJpeg = (bytes: Buffer): Buffer | undefined => {
  const kept: Buffer[] = [bytes.subarray(0, 2)];
  for (let part = partAt(bytes, 2); part !== undefined; part = partAt(bytes, part.end)) {
    kept.push(...part.keep);
    if (part.last) return isDecodable(kept) ? Buffer.concat(kept) : undefined;
  }
  return undefined;
};

type Part = { readonly keep: readonly Buffer[]; readonly end: number; readonly last: boolean };

/** One marker and what belongs to it; undefined where there is none, or not all of it. */
const partAt = (bytes: Buffer, from: number): Part | undefined => {
  let at = from;
  while (bytes[at] === FILL && bytes[at + 1] === FILL) at += 1;
  const marker = bytes[at + 1];
  if (bytes[at] !== FILL || marker === undefined) return undefined;
  if (marker === EOI) return { keep: [bytes.subarray(at, at + 2)], end: at + 2, last: true };
  if (at + 4 > bytes.length) return undefined;

  const length = bytes.readUInt16BE(at + 2);
  const next = at + 2 + length;
  if (length < 2 || next > bytes.length) return undefined;
  const end = marker === SOS ? endOfScan(bytes, next) : next;
  return {
    keep: [...segment(marker, bytes.subarray(at, next)), bytes.subarray(next, end)],
    end,
    last: false,
  };
};

const FILL = 0xff;
const EOI = 0xd9;
const SOS = 0xda;
const COM = 0xfe;
const APP0 = 0xe0;
const APP1 = 0xe1;
const APP2 = 0xe2;
const APP14 = 0xee;
const APP15 = 0xef;

/** Application segments without which colours come out wrong, by what they begin with. */
const NEEDED: { readonly [marker: number]: string } = {
  [APP0]: 'JFIF\0',
  [APP2]: 'ICC_PROFILE\0',
  [APP14]: 'Adobe',
};

const segment = (marker: number, bytes: Buffer): readonly Buffer[] => {
  const body = bytes.subarray(4);
  if (marker === APP1) return oriented(orientationIn(body));
  if (marker === COM || (marker >= APP0 && marker <= APP15)) {
    const begins = NEEDED[marker];
    return begins !== undefined && startsWith(body, begins) ? [bytes] : [];
  }
  return [bytes];
};

const oriented = (orientation: number | undefined): readonly Buffer[] => {
  if (orientation === undefined || orientation === 1) return [];
  const body = orientedExif(orientation);
  const head = Buffer.from([FILL, APP1, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return [Buffer.concat([head, body])];
};

/** In a scan FF is followed by 00, or by a restart marker; anything else begins what comes after it. */
const endOfScan = (bytes: Buffer, from: number): number => {
  for (let at = bytes.indexOf(FILL, from); at >= 0; at = bytes.indexOf(FILL, at + 1)) {
    const after = bytes[at + 1] ?? 0;
    if (after !== 0 && after !== FILL && !(after >= 0xd0 && after <= 0xd7)) return at;
  }
  return bytes.length;
};

/** A frame header and a scan: without them there is nothing to see. */
const isDecodable = (kept: readonly Buffer[]): boolean =>
  kept.some((part) => isFrame(part[1] ?? 0)) && kept.some((part) => part[0] === FILL && part[1] === SOS);
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

const startsWith = (bytes: Buffer, text: string): boolean =>
  bytes.subarray(0, text.length).toString('latin1') === text;
