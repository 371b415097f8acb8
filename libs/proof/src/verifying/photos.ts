import { hexOf } from '../bytes';
import { PHOTO_FOLDER } from '../evidence/files';
import type { PacketFiles } from '../evidence/files';
import type { Sha256 } from '../hashing';
import type { Genuine } from './events';
import { failed, open, proven } from './outcome';
import type { Outcome } from './outcome';

/**
 * An event names its photos by their hash: what is proven of the event is proven of them, whoever kept them. `known`:
 * what was said of files already; once is enough.
 */
export const photosShown = (
  sha256: Sha256,
  files: PacketFiles,
  genuine: readonly Genuine[],
  known: readonly Outcome[],
): readonly Outcome[] => {
  const named = new Set(genuine.flatMap(({ event }) => event.claims?.photos ?? []));
  const said = new Set(known.flatMap(({ is, place }) => (is === 'failed' ? [place.file] : [])));
  const here = [...files].filter(([file]) => file.startsWith(PHOTO_FOLDER));
  const wrong = here.flatMap(([file, bytes]) => photoOutcome(file, hexOf(sha256(bytes)), named));
  const missing = named.size - here.length;
  return [
    ...wrong.filter(({ place }) => !said.has(place.file)),
    ...(wrong.length > 0 || here.length === 0 ? [] : [proven('photos-named', { photos: here.length })]),
    ...(missing > 0 ? [open('photos-elsewhere', { photos: missing })] : []),
  ];
};

const photoOutcome = (file: string, hash: string, named: ReadonlySet<string>): readonly Outcome[] => {
  const name = file.slice(PHOTO_FOLDER.length).split('.')[0] ?? '';
  if (name !== hash) return [failed('photo-other', { file })];
  return named.has(hash) ? [] : [failed('photo-unnamed', { file })];
};
