import { createHash, randomUUID } from 'node:crypto';
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import type { Photo } from './photo';
import { EXTENSIONS, isPhotoHash } from './photo';

/** Photos by their SHA-256, as plain files that any program can show. Nothing in it is ever changed. */
export type PhotoStore = {
  /** On disk when it returns. The same picture is kept once. */
  readonly keep: (photo: Photo) => string;
  /** Undefined: it is not here. Throws PhotoAltered when it is no longer what its name says. */
  readonly read: (hash: string) => Photo | undefined;
  readonly has: (hash: string) => boolean;
};

export class PhotoAltered extends Error {
  constructor(path: string) {
    super(`${path} is not the photo its name says: it was changed or damaged. Restore it from a backup.`);
    this.name = 'PhotoAltered';
  }
}

export const photoStore = (folder: string): PhotoStore => {
  const pathOf = (hash: string, type: Photo['type']): string =>
    join(folder, hash.slice(0, 2), `${hash}.${EXTENSIONS[type]}`);
  const typeKept = (hash: string): Photo['type'] | undefined =>
    isPhotoHash(hash) ? TYPES.find((type) => existsSync(pathOf(hash, type))) : undefined;

  return {
    keep: (photo) => {
      const hash = hashOf(photo.bytes);
      if (typeKept(hash) === undefined) writeWhole(pathOf(hash, photo.type), photo.bytes);
      return hash;
    },
    read: (hash) => {
      const type = typeKept(hash);
      if (type === undefined) return undefined;
      const bytes = readFileSync(pathOf(hash, type));
      if (hashOf(bytes) !== hash) throw new PhotoAltered(pathOf(hash, type));
      return { type, bytes };
    },
    has: (hash) => typeKept(hash) !== undefined,
  };
};

const TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const;
const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Under another name until all of it is on disk: whoever finds the photo finds it whole. */
const writeWhole = (path: string, bytes: Uint8Array): void => {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const part = `${path}.${randomUUID()}.part`;
  try {
    const file = openSync(part, 'wx', 0o600);
    try {
      writeFileSync(file, bytes);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(part, path);
  } finally {
    rmSync(part, { force: true });
  }
  syncFolder(dirname(path));
};

const syncFolder = (folder: string): void => {
  const handle = openSync(folder, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
};
