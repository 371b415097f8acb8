import { createHash } from 'node:crypto';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { photoStore, photosOf } from '@libs/plant';
import type { Photos } from '@libs/plant';
import exifr from 'exifr';
import { phoneJpeg, picture, taggedPng, taggedWebp } from '../support/pictures';

const everything = { gps: true, exif: true, xmp: true, iptc: true, jfif: false, icc: false } as const;
const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

describe('the photos of a plant', () => {
  let folder: string;
  let photos: Photos;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'photos-'));
    photos = photosOf(photoStore(folder));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  const kept = (bytes: Buffer): Buffer => {
    const answer = photos.keep(bytes);
    if (!answer.ok) throw new Error(answer.why);
    return Buffer.from(photos.read(answer.photo)?.bytes ?? []);
  };

  it('say nothing of where they were taken: an Exif reader of others finds the place before, and none after', async () => {
    expect(await exifr.gps(phoneJpeg())).toMatchObject({
      latitude: 41.25,
      longitude: expect.closeTo(-95.9333, 3),
    });
    const clean = kept(phoneJpeg());

    expect(await exifr.gps(clean)).toBeUndefined();
    expect(await exifr.orientation(clean)).toBe(6);
    expect(Object.keys((await exifr.parse(clean, everything)) ?? {})).toStrictEqual(['Orientation']);
  });

  it.each([
    ['JPEG', phoneJpeg],
    ['PNG', taggedPng],
    ['WebP', taggedWebp],
  ])('hold no text of whoever took them, nor a second picture: %s', (_, tagged) => {
    expect(tagged().includes('Prairie Road')).toBe(true);
    const clean = kept(tagged());

    expect(clean.includes('Prairie Road')).toBe(false);
    expect(clean.includes(Buffer.from('2988', 'hex'))).toBe(false);
    expect(clean.length).toBeLessThan(tagged().length);
  });

  it.each(['jpg', 'png', 'webp'] as const)(
    'are the same bytes where there was nothing to leave out: %s',
    (kind) => {
      expect(kept(picture(kind)).equals(picture(kind))).toBe(true);
    },
  );

  it.each([
    ['jpg', phoneJpeg],
    ['png', taggedPng],
    ['webp', taggedWebp],
  ] as const)(
    'are what they were before they were tagged, or the same again on a second cleaning: %s',
    (kind, tagged) => {
      const clean = kept(tagged());
      expect(kept(clean).equals(clean)).toBe(true);
      if (kind !== 'jpg') expect(clean.equals(picture(kind))).toBe(true);
    },
  );

  it('are kept once, as plain files named after their hash', () => {
    const first = photos.keep(picture('jpg'));
    const second = photos.keep(picture('jpg'));
    const hash = sha256(picture('jpg'));

    expect(second).toStrictEqual(first);
    expect(first).toStrictEqual({ ok: true, photo: hash, type: 'image/jpeg', bytes: picture('jpg').length });
    expect(readdirSync(folder, { recursive: true })).toStrictEqual(
      expect.arrayContaining([join(hash.slice(0, 2), `${hash}.jpg`)]),
    );
    expect(readdirSync(folder, { recursive: true })).toHaveLength(2);
  });

  it.each([
    ['nothing', Buffer.alloc(0), 'photo-empty'],
    ['a page that calls itself a picture', Buffer.from('<svg onload="x()"/>'), 'photo-not-a-picture'],
    ['a GIF', Buffer.from('GIF89a0000'), 'photo-not-a-picture'],
    ['a JPEG cut short', picture('jpg').subarray(0, -40), 'photo-broken'],
    ['a JPEG without a picture', Buffer.from('ffd8ffd9', 'hex'), 'photo-broken'],
    ['a PNG cut short', picture('png').subarray(0, -20), 'photo-broken'],
    ['a WebP cut short', picture('webp').subarray(0, -20), 'photo-broken'],
    ['more than any camera makes', Buffer.alloc(17_000_000, 1), 'photo-too-large'],
  ])('are pictures, whole: not %s', (_, bytes, why) => {
    expect(photos.keep(bytes)).toStrictEqual({ ok: false, why });
    expect(readdirSync(folder)).toStrictEqual([]);
  });

  it('are not broken by any damage: every byte of a PNG changed is refused or gives a picture as long', () => {
    for (let at = 8; at < picture('png').length; at += 7) {
      const damaged = picture('png');
      damaged[at] = (damaged[at] ?? 0) ^ 0x40;
      expect(photos.keep(damaged)).toStrictEqual({ ok: false, why: expect.stringMatching(/^photo-/) });
    }
  });

  it('are never shown as another: a changed file is named', () => {
    const answer = photos.keep(picture('png'));
    const hash = answer.ok ? answer.photo : '';
    writeFileSync(join(folder, hash.slice(0, 2), `${hash}.png`), picture('jpg'));

    expect(() => photos.read(hash)).toThrow(`${hash}.png is not the photo its name says`);
  });

  it('are found by their hash alone, never by a path', () => {
    expect(photos.read('../../etc/passwd')).toBeUndefined();
    expect(photos.has('0'.repeat(64))).toBe(false);
  });
});
