import { existsSync, readFileSync, readdirSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { NOTE_TOOLS } from '@libs/ledger';
import { allProven, outcomeSays, verifyPacked, verifyPacket } from '@libs/proof';
import type { Outcome, PacketFiles } from '@libs/proof';
import { Usable } from '../exit-code';

export type Judged = {
  readonly proven: boolean;
  readonly outcomes: readonly (Outcome & { readonly says: { readonly en: string; readonly es: string } })[];
};

/** What the reader gives to compare with: names of files, and a key as text or in a file. */
export type GivenToCompare = {
  readonly checkpoint?: string | undefined;
  readonly key?: string | undefined;
  readonly bridge?: string | undefined;
};

/** A packet as a ZIP, or unpacked in a folder. Needs no plant, no server and no network. */
export const judgePacket = (path: string, given: GivenToCompare): Judged => {
  if (!existsSync(path)) throw new Usable(`There is no packet at ${path}.`);

  const held = {
    checkpoint: textOf(given.checkpoint),
    bridge: textOf(given.bridge),
    key: given.key !== undefined && existsSync(given.key) ? textOf(given.key) : given.key,
  };
  return judged(
    statSync(path).isDirectory()
      ? verifyPacket(filesIn(path), NOTE_TOOLS, held)
      : verifyPacked(new Uint8Array(readFileSync(path)), NOTE_TOOLS, held),
  );
};

export const judged = (outcomes: readonly Outcome[]): Judged => ({
  proven: allProven(outcomes),
  outcomes: outcomes.map((outcome) => ({ ...outcome, says: outcomeSays(outcome) })),
});

const textOf = (file: string | undefined): string | undefined => {
  if (file === undefined) return undefined;
  if (!existsSync(file)) throw new Usable(`There is no file ${file}.`);
  return readFileSync(file, 'utf8');
};

/** Named as in the ZIP. */
const filesIn = (folder: string): PacketFiles =>
  new Map(
    readdirSync(folder, { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile())
      .map((entry) => {
        const path = join(entry.parentPath, entry.name);
        return [relative(folder, path).split(sep).join('/'), new Uint8Array(readFileSync(path))] as const;
      }),
  );
