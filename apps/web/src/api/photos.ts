import type { AnswerOf } from '@libs/contracts';
import { jsonAs } from './json';
import { PHOTOS, showFromHere } from './photo-address';
import { forgetWaiting, keepWaiting, waitingPhotos } from './waiting-photos';

/** Longer sides than this show no more of a strap or a nail; a picture becomes some 400 kB. */
const LONGEST_SIDE = 2_048;
const QUALITY = 0.85;

export type KeptPhoto =
  /** `waits`: on this device until the server can be reached. */
  | { readonly ok: true; readonly photo: string; readonly waits: boolean }
  | { readonly ok: false; readonly why: 'unreadable' | 'unreachable' | 'refused'; readonly says?: string };

/** As it is kept: drawn anew, so that nothing of place, time or owner is left in it, before it leaves this device. */
const drawnAnew = async (file: Blob): Promise<Blob | undefined> => {
  const picture = await createImageBitmap(file).catch(notAPicture);
  if (picture === undefined) return undefined;
  const scale = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(picture.width * scale);
  canvas.height = Math.round(picture.height * scale);
  canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  return new Promise((resolve) => {
    canvas.toBlob((blob) => resolve(blob ?? undefined), 'image/jpeg', QUALITY);
  });
};

/** `createImageBitmap` says InvalidStateError of what it cannot read; anything else is a mistake of ours. */
const notAPicture = (fault: unknown): undefined => {
  if (fault instanceof DOMException) return undefined;
  throw fault;
};

/** Undefined where the browser gives no hash: it does so only to pages it trusts, https or the device itself. */
const fingerprint = async (photo: Blob): Promise<string | undefined> => {
  if (!('subtle' in crypto)) return undefined;
  const digest = await crypto.subtle.digest('SHA-256', await photo.arrayBuffer());
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, '0')).join('');
};

/** Who takes a photo: the plant from somebody signed in, or from whoever holds a link. */
type Receiver = { readonly path: string; readonly headers: Readonly<Record<string, string>> };
const OWN: Receiver = { path: PHOTOS, headers: {} };

type Upload = { readonly photo: string } | { readonly says: string } | 'unreachable';

const upload = async (photo: Blob, to: Receiver = OWN): Promise<Upload> => {
  try {
    const response = await fetch(to.path, {
      method: 'POST',
      body: photo,
      headers: { accept: 'application/json', 'content-type': 'image/jpeg', ...to.headers },
    });
    if (response.status >= 500) return 'unreachable';
    const text = await response.text();
    if (response.ok) return { photo: jsonAs<AnswerOf<'photo'>>(text).photo };
    const problem = text.startsWith('{') ? jsonAs<{ readonly detail?: string }>(text) : {};
    return { says: problem.detail ?? `HTTP ${String(response.status)}` };
  } catch (fault) {
    // `fetch` says TypeError when nobody answers.
    if (fault instanceof TypeError) return 'unreachable';
    throw fault;
  }
};

/** Brings a picture to the plant's photos and says by which name the record may speak of it. */
export const keepPhoto = async (file: Blob): Promise<KeptPhoto> => {
  const drawn = await drawnAnew(file);
  if (drawn === undefined) return { ok: false, why: 'unreadable' };
  const sent = await upload(drawn);
  if (sent === 'unreachable') return waiting(drawn);
  if ('says' in sent) return { ok: false, why: 'refused', says: sent.says };
  showFromHere(sent.photo, drawn);
  return { ok: true, photo: sent.photo, waits: false };
};

/** By whoever holds a link. Nothing waits on a device that is not the plant's: it is sent now, or not kept. */
export const keepLinkPhoto = async (file: Blob, path: string, token: string): Promise<KeptPhoto> => {
  const drawn = await drawnAnew(file);
  if (drawn === undefined) return { ok: false, why: 'unreadable' };
  const sent = await upload(drawn, { path, headers: { authorization: `Bearer ${token}` } });
  if (sent === 'unreachable') return { ok: false, why: 'unreachable' };
  if ('says' in sent) return { ok: false, why: 'refused', says: sent.says };
  showFromHere(sent.photo, drawn);
  return { ok: true, photo: sent.photo, waits: false };
};

/** The server takes a picture drawn anew as it is, so that its name is known before it is there. */
const waiting = async (photo: Blob): Promise<KeptPhoto> => {
  const hash = await fingerprint(photo);
  if (hash === undefined) return { ok: false, why: 'unreachable' };
  await keepWaiting(hash, photo);
  showFromHere(hash, photo);
  return { ok: true, photo: hash, waits: true };
};

/** Sends what waits on this device; stops at the first that still finds nobody. How many are left. */
export const sendPhotosAgain = async (): Promise<number> => {
  const photos = await waitingPhotos();
  for (const [n, { hash, photo }] of photos.entries()) {
    const sent = await upload(photo);
    // What the server will not take, signed out perhaps, stays here too: nothing is thrown away unseen.
    if (sent === 'unreachable' || 'says' in sent) return photos.length - n;
    await forgetWaiting(hash);
  }
  return 0;
};
