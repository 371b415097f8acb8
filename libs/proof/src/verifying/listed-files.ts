import { hexOf } from '../bytes';
import type { Sha256 } from '../hashing';
import type { ListedFile, PacketFiles } from '../evidence/files';
import { failed } from './outcome';
import type { Outcome } from './outcome';

/** Each file against the list it stands in; `folder` is in front of every name listed. */
export const listedFiles = (
  sha256: Sha256,
  files: PacketFiles,
  {
    listed,
    folder,
    itself,
  }: { readonly listed: readonly ListedFile[]; readonly folder: string; readonly itself: readonly string[] },
): readonly Outcome[] => {
  const names = new Set([...itself, ...listed.map(({ name }) => `${folder}${name}`)]);
  const unlisted = [...files.keys()].filter((name) => name.startsWith(folder) && !names.has(name));
  return [
    ...listed.flatMap((file) => fileOutcome(sha256, files.get(`${folder}${file.name}`), file, folder)),
    ...unlisted.map((file) => failed('file-unlisted', { file })),
  ];
};

const fileOutcome = (
  sha256: Sha256,
  bytes: Uint8Array | undefined,
  { name, bytes: expected, sha256: digest }: ListedFile,
  folder: string,
): readonly Outcome[] => {
  const file = `${folder}${name}`;
  if (bytes === undefined) return [failed('file-missing', { file })];

  const sizes = { expected, found: bytes.length };
  if (bytes.length < expected) return [failed('file-cut-short', { file }, sizes)];
  if (bytes.length > expected) return [failed('file-lengthened', { file }, sizes)];
  const found = hexOf(sha256(bytes));
  return found === digest ? [] : [failed('file-altered', { file }, { expected: digest, found })];
};
