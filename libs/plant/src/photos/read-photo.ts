import { LIMITS } from '@libs/contracts';
import { cleanJpeg } from './clean-jpeg';
import { cleanPng } from './clean-png';
import { cleanWebp } from './clean-webp';
import type { Photo, PhotoRead } from './photo';

/**
 * Bytes from outside as a photo that may be kept: its kind told by its content, never by its name; walked to its end;
 * what would locate people left out. Doing it twice changes nothing more, so that a device that cleaned a picture
 * before it took the fingerprint finds the same one here.
 */
export const readPhoto = (given: Uint8Array): PhotoRead => {
  const bytes = Buffer.from(given.buffer, given.byteOffset, given.byteLength);
  if (bytes.length === 0) return { ok: false, why: 'photo-empty' };
  if (bytes.length > LIMITS.photoBytes) return { ok: false, why: 'photo-too-large' };

  const type = kindOf(bytes);
  if (type === undefined) return { ok: false, why: 'photo-not-a-picture' };
  const cleaned = CLEAN[type](bytes);
  return cleaned === undefined
    ? { ok: false, why: 'photo-broken' }
    : { ok: true, photo: { type, bytes: cleaned } };
};

const CLEAN = { 'image/jpeg': cleanJpeg, 'image/png': cleanPng, 'image/webp': cleanWebp } as const;

const PNG = '89504e470d0a1a0a';
const RIFF = '52494646';
const WEBP = '57454250';
const JPEG = 'ffd8ff';

/** By its first bytes. */
export const kindOf = (bytes: Buffer): Photo['type'] | undefined => {
  const first = bytes.subarray(0, 12).toString('hex');
  if (first.startsWith(JPEG)) return 'image/jpeg';
  if (first.startsWith(PNG)) return 'image/png';
  return first.startsWith(RIFF) && first.endsWith(WEBP) ? 'image/webp' : undefined;
};
