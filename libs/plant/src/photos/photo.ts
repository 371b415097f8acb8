/** A picture as it is kept: of a known kind, whole, and without what its camera says of where and by whom it was taken. */
export type Photo = {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp';
  readonly bytes: Uint8Array;
};

/** Why bytes are not taken as a photo. */
export type PhotoRefusal = 'photo-empty' | 'photo-too-large' | 'photo-not-a-picture' | 'photo-broken';

export type PhotoRead =
  { readonly ok: true; readonly photo: Photo } | { readonly ok: false; readonly why: PhotoRefusal };

export const EXTENSIONS = {
  'image/jpeg': 'jpg',
  'image/png': 'png',
  'image/webp': 'webp',
} as const satisfies { readonly [type in Photo['type']]: string };

/** `data.photos` of an event: SHA-256 of each, in hex. */
export const photosIn = ({ photos }: { readonly [field: string]: unknown }): readonly string[] =>
  Array.isArray(photos)
    ? photos.filter((one): one is string => typeof one === 'string' && HASH.test(one))
    : [];

const HASH = /^[0-9a-f]{64}$/;
export const isPhotoHash = (text: string): boolean => HASH.test(text);
