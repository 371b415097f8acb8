import { crc32 } from 'node:zlib';

/** Chunks that decoding and true colour need (PNG, third edition, section 11). Texts, times and Exif are not among them. */
const KEPT = new Set([
  ...['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS', 'cHRM', 'gAMA', 'iCCP', 'sBIT', 'sRGB', 'cICP'],
  ...['bKGD', 'pHYs', 'sPLT', 'hIST'],
]);

/** Undefined: it is cut short, a chunk of it is damaged, or it needs what we do not know. */
export const cleanPng = (bytes: Buffer): Buffer | undefined => {
  const kept: Buffer[] = [bytes.subarray(0, SIGNATURE_BYTES)];
  const names: string[] = [];
  for (let at = SIGNATURE_BYTES; at + AROUND <= bytes.length;) {
    const end = at + AROUND + bytes.readUInt32BE(at);
    if (end > bytes.length || !isSound(bytes.subarray(at, end))) return undefined;

    const name = bytes.subarray(at + 4, at + 8).toString('latin1');
    names.push(name);
    if (KEPT.has(name)) kept.push(bytes.subarray(at, end));
    // A capital first letter: the picture cannot be shown without this chunk.
    else if (/^[A-Z]/.test(name)) return undefined;
    if (name === 'IEND')
      return names[0] === 'IHDR' && names.includes('IDAT') ? Buffer.concat(kept) : undefined;
    at = end;
  }
  return undefined;
};

const SIGNATURE_BYTES = 8;
/** Length, name and checksum. */
const AROUND = 12;

const isSound = (chunk: Buffer): boolean =>
  crc32(chunk.subarray(4, -4)) === chunk.readUInt32BE(chunk.length - 4);
