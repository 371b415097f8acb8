import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';

/** Drawn by a browser's canvas: 48 by 32, red to blue. */
export const picture = (kind: 'jpg' | 'png' | 'webp'): Buffer =>
  readFileSync(join(__dirname, '../plant/samples', `wall.${kind}`));

/**
 * What a phone writes beside the picture: Exif 2.3 with an orientation (0112) and a GPS directory (8825) that says
 * 41° 15' north, 95° 56' west, in the open prairie of somebody's county.
 */
export const gpsExif = (orientation = 6): Buffer => {
  const tiff = Buffer.alloc(140);
  tiff.write('II*\0', 0, 'latin1');
  tiff.writeUInt32LE(8, 4);
  const entry = (at: number, tag: number, [type, count, value]: readonly [number, number, number]): void => {
    tiff.writeUInt16LE(tag, at);
    tiff.writeUInt16LE(type, at + 2);
    tiff.writeUInt32LE(count, at + 4);
    tiff.writeUInt32LE(value, at + 8);
  };
  tiff.writeUInt16LE(2, 8);
  entry(10, 0x0112, [3, 1, orientation]);
  entry(22, 0x8825, [4, 1, 38]);
  tiff.writeUInt16LE(4, 38);
  entry(40, 1, [2, 2, 'N'.charCodeAt(0)]);
  entry(52, 2, [5, 3, 92]);
  entry(64, 3, [2, 2, 'W'.charCodeAt(0)]);
  entry(76, 4, [5, 3, 116]);
  [41, 1, 15, 1, 0, 1].forEach((part, n) => tiff.writeUInt32LE(part, 92 + n * 4));
  [95, 1, 56, 1, 0, 1].forEach((part, n) => tiff.writeUInt32LE(part, 116 + n * 4));
  return Buffer.concat([Buffer.from('Exif\0\0', 'latin1'), tiff]);
};

const jpegSegment = (marker: number, body: Buffer): Buffer => {
  const head = Buffer.from([0xff, marker, 0, 0]);
  head.writeUInt16BE(body.length + 2, 2);
  return Buffer.concat([head, body]);
};

const OWNER = 'Taken by Nobody of Prairie Road';

/** A JPEG as it comes out of a phone: Exif with a place, a comment, and a second picture behind its end. */
export const phoneJpeg = (orientation = 6): Buffer => {
  const plain = picture('jpg');
  return Buffer.concat([
    plain.subarray(0, 2),
    jpegSegment(0xe1, gpsExif(orientation)),
    jpegSegment(0xe1, Buffer.from(`http://ns.adobe.com/xap/1.0/\0<x>${OWNER}</x>`, 'latin1')),
    jpegSegment(0xed, Buffer.from(`Photoshop 3.0\0${OWNER}`, 'latin1')),
    jpegSegment(0xfe, Buffer.from(OWNER, 'latin1')),
    plain.subarray(2),
    plain,
  ]);
};

const pngChunk = (name: string, body: Buffer): Buffer => {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), body]);
  const around = Buffer.alloc(8);
  around.writeUInt32BE(body.length, 0);
  around.writeUInt32BE(crc32(named), 4);
  return Buffer.concat([around.subarray(0, 4), named, around.subarray(4)]);
};

/** With a text, a time and Exif, before the picture's end. */
export const taggedPng = (): Buffer => {
  const plain = picture('png');
  return Buffer.concat([
    plain.subarray(0, -12),
    pngChunk('tEXt', Buffer.from(`Author\0${OWNER}`, 'latin1')),
    pngChunk('eXIf', gpsExif().subarray(6)),
    plain.subarray(-12),
  ]);
};

const riffChunk = (name: string, body: Buffer): Buffer => {
  const head = Buffer.from(`${name}\0\0\0\0`, 'latin1');
  head.writeUInt32LE(body.length, 4);
  return Buffer.concat([head, body, Buffer.alloc(body.length % 2)]);
};

/** With Exif and XMP behind the picture, and the flags that announce them. */
export const taggedWebp = (): Buffer => {
  const plain = Buffer.from(picture('webp'));
  plain[20] = (plain[20] ?? 0) | 0x0c;
  const tagged = Buffer.concat([
    plain,
    riffChunk('EXIF', gpsExif().subarray(6)),
    riffChunk('XMP ', Buffer.from(`<x>${OWNER}</x>`, 'latin1')),
  ]);
  tagged.writeUInt32LE(tagged.length - 8, 4);
  return tagged;
};
