const HEADER = 'Exif\0\0';
const ORIENTATION = 0x0112;
const SHORT = 3;

/** Which way up the camera was held, 1 to 8 (Exif 2.3, tag 0112), where the segment says so. */
export const orientationIn = (segment: Buffer): number | undefined => {
  if (segment.subarray(0, HEADER.length).toString('latin1') !== HEADER) return undefined;
  const tiff = segment.subarray(HEADER.length);
  const little = tiff.subarray(0, 2).toString('latin1') === 'II';
  const u16 = (at: number): number =>
    at + 2 > tiff.length ? 0 : little ? tiff.readUInt16LE(at) : tiff.readUInt16BE(at);
  const u32 = (at: number): number =>
    at + 4 > tiff.length ? 0 : little ? tiff.readUInt32LE(at) : tiff.readUInt32BE(at);

  const directory = u32(4);
  const entries = Array.from({ length: Math.min(u16(directory), 200) }, (_, n) => directory + 2 + n * 12);
  const found = entries.find((at) => u16(at) === ORIENTATION && u16(at + 2) === SHORT);
  const orientation = found === undefined ? 0 : u16(found + 8);
  return orientation >= 1 && orientation <= 8 ? orientation : undefined;
};

/** An Exif segment that says which way up, and nothing else. */
export const orientedExif = (orientation: number): Buffer => {
  const tiff = Buffer.alloc(26);
  tiff.write('MM', 0, 'latin1');
  tiff.writeUInt16BE(42, 2);
  tiff.writeUInt32BE(8, 4);
  tiff.writeUInt16BE(1, 8);
  tiff.writeUInt16BE(ORIENTATION, 10);
  tiff.writeUInt16BE(SHORT, 12);
  tiff.writeUInt32BE(1, 14);
  tiff.writeUInt16BE(orientation, 18);
  return Buffer.concat([Buffer.from(HEADER, 'latin1'), tiff]);
};
