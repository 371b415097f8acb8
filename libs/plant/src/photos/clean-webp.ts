/** Chunks a picture is made of (RFC 9649). Exif and XMP are not among them. */
const KEPT = new Set(['VP8 ', 'VP8L', 'VP8X', 'ALPH', 'ANIM', 'ANMF', 'ICCP']);
const PICTURES = ['VP8 ', 'VP8L', 'ANMF'];

/** Undefined: it is cut short or holds no picture. */
export const cleanWebp = (bytes: Buffer): Buffer | undefined => {
  const end = HEAD + bytes.readUInt32LE(4);
  if (end > bytes.length) return undefined;

  const kept: Buffer[] = [];
  const names: string[] = [];
  for (let at = FIRST_CHUNK; at < end;) {
    if (at + HEAD > end) return undefined;
    const size = bytes.readUInt32LE(at + 4);
    // Padded to an even length.
    const next = at + HEAD + size + (size % 2);
    if (next > end) return undefined;
    const name = bytes.subarray(at, at + 4).toString('latin1');
    if (KEPT.has(name)) {
      names.push(name);
      kept.push(name === 'VP8X' ? withoutFlags(bytes.subarray(at, next)) : bytes.subarray(at, next));
    }
    at = next;
  }
  return names.some((name) => PICTURES.includes(name)) ? riff(kept) : undefined;
};

const HEAD = 8;
const FIRST_CHUNK = 12;
const HAS_EXIF = 0x08;
const HAS_XMP = 0x04;

const withoutFlags = (chunk: Buffer): Buffer => {
  const copy = Buffer.from(chunk);
  copy[HEAD] = (copy[HEAD] ?? 0) & ~(HAS_EXIF | HAS_XMP);
  return copy;
};

const riff = (chunks: readonly Buffer[]): Buffer => {
  const body = Buffer.concat([Buffer.from('WEBP', 'latin1'), ...chunks]);
  const head = Buffer.from('RIFF\0\0\0\0', 'latin1');
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body]);
};
