import type { Photo, PhotoRefusal } from './photo';
import type { PhotoStore } from './photo-store';
import { readPhoto } from './read-photo';

export type PhotoKept =
  | { readonly ok: true; readonly photo: string; readonly type: Photo['type']; readonly bytes: number }
  | { readonly ok: false; readonly why: PhotoRefusal };

/** The plant's photos. What was done names them by their fingerprint; here they are. */
export type Photos = {
  readonly keep: (bytes: Uint8Array) => PhotoKept;
  /** Undefined: it was named, perhaps, and never brought here. */
  readonly read: (hash: string) => Photo | undefined;
  readonly has: (hash: string) => boolean;
};

export const photosOf = (store: PhotoStore): Photos => ({
  keep: (bytes) => {
    const read = readPhoto(bytes);
    if (!read.ok) return read;
    const { type } = read.photo;
    return { ok: true, photo: store.keep(read.photo), type, bytes: read.photo.bytes.length };
  },
  read: store.read,
  has: store.has,
});
