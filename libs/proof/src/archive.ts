import { unzipSync, zipSync } from 'fflate';
import { sameBytes, textOf } from './bytes';
import type { PacketFiles } from './evidence/files';

/**
 * A packet as one ZIP, the same bytes for the same files: every file stored as it is, under one fixed date. Nothing is
 * compressed, so that no bit of it can be changed without a file, or the wrapping, being another.
 */
export const packedFiles = (files: PacketFiles): Uint8Array =>
  // Copied, since the library looks for arrays of its own realm, which a server's buffers need not be.
  zipSync(Object.fromEntries([...files].map(([name, bytes]) => [name, new Uint8Array(bytes)])), {
    level: 0,
    mtime: FIXED_DATE,
  });

/** Without an offset: read as local time and written as local time, it is the same in every time zone. */
const FIXED_DATE = '1980-01-01T00:00:00';

export type Unpacked = {
  readonly files: PacketFiles;
  /** First byte at which it differs from how these files are packed; undefined: it does not. */
  readonly differsAt: number | undefined;
};

/** Undefined where no file can be read from it at all. What is cut short is read as far as it goes. */
export const unpackedFiles = (bytes: Uint8Array): Unpacked | undefined => {
  const files = storedFiles(bytes) ?? compressedFiles(bytes);
  if (files === undefined || files.size === 0) return undefined;

  const again = packedFiles(files);
  return { files, differsAt: sameBytes(again, bytes) ? undefined : firstDifference(again, bytes) };
};

const firstDifference = (a: Uint8Array, b: Uint8Array): number => {
  let at = 0;
  while (at < a.length && at < b.length && a[at] === b[at]) at += 1;
  return at;
};

const LOCAL_HEADER = 0x04034b50;
const LOCAL_HEADER_BYTES = 30;

/** From one local header to the next, whatever the directory at the end says; undefined where a file is compressed. */
const storedFiles = (bytes: Uint8Array): PacketFiles | undefined => {
  const files = new Map<string, Uint8Array>();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  for (let at = 0; at + LOCAL_HEADER_BYTES <= bytes.length && view.getUint32(at, true) === LOCAL_HEADER;) {
    if (view.getUint16(at + 8, true) !== 0) return undefined;
    const named = at + LOCAL_HEADER_BYTES;
    const content = named + view.getUint16(at + 26, true) + view.getUint16(at + 28, true);
    const name = textOf(bytes.subarray(named, named + view.getUint16(at + 26, true)));
    const next = content + view.getUint32(at + 18, true);
    if (name !== undefined) files.set(name, bytes.subarray(content, next));
    at = next;
  }
  return files;
};

/** A packet that somebody packed anew may blow up to this much, and no more. */
const UNPACKED_LIMIT = 512 * 1024 * 1024;

const compressedFiles = (bytes: Uint8Array): PacketFiles | undefined => {
  let left = UNPACKED_LIMIT;
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        left -= originalSize;
        return left >= 0 && !name.endsWith('/');
      },
    });
    return left < 0 ? undefined : new Map(Object.entries(files));
  } catch {
    return undefined;
  }
};
