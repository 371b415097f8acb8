import { randomBytes } from 'node:crypto';
import { chmodSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { keyChangeNote, keyText, originOf, readKeyChange } from '@libs/proof';
import type { Signer, VerifierKey } from '@libs/proof';
import { Fault } from '../fault';
import { eraseDurably, textIfThere, writeDurably } from '../sealing/durable-file';
import type { RandomBytes } from '../sealing/key-store';
import { NOTE_TOOLS, signerOf } from './ed25519';

/** The key that checkpoints are signed with. It lies outside the database: who can edit that cannot sign. */
export type SigningKeys = {
  /** Made, and on disk, when it is first asked for. */
  readonly signer: () => Signer;
  /** Notes in which an old key and the one after it both say that it took over, oldest first. */
  readonly changes: () => readonly string[];
  /** Keys signed with now and before, as far as there are any: makes none. */
  readonly known: () => readonly VerifierKey[];
  /** Signs with a new key from this size of the ledger on; returns the note that says so. */
  readonly change: (since: number) => string;
};

export class SigningKeyUnreadable extends Fault {
  constructor(file: string) {
    super(
      `${file} is not the signing key that the key changes lead to. Restore it from its backup: ` +
        'a new key would look like a forger’s to everyone who holds an older checkpoint.',
      'do-not-send-again',
    );
  }
}

const KEY_BYTES = 32;
const KEY_TEXT = /^[0-9a-f]{64}$/;
const KEY_FILE = /^(\d{4})\.key$/;
const CHANGES = 'changes.jsonl';

/**
 * One file a key, `0001.key` the first. A change is written in this order: the new key, the note, the old key erased.
 * The note decides: after a crash in between, a key that no note leads to was never used.
 */
export const openSigningKeys = (
  folder: string,
  ledger: string,
  random: RandomBytes = randomBytes,
): SigningKeys => {
  const name = originOf(ledger);

  const changes = (): readonly string[] =>
    (textIfThere(join(folder, CHANGES)) ?? '')
      .split('\n')
      .filter((line) => line !== '')
      .map((line) => String((JSON.parse(line) as { note: unknown }).note));

  const signer = (): Signer => {
    const made = changes().length;
    const file = fileOf(made + 1);
    if (textIfThere(join(folder, file)) === undefined && made === 0) makeKey(folder, file, random);
    const found = readSigner(folder, file, name);
    if (!followsFrom(changes(), found)) throw new SigningKeyUnreadable(join(folder, file));
    return found;
  };

  return {
    signer,
    changes,
    known: () => {
      const past = changes().flatMap((note) => readKeyChange(note, NOTE_TOOLS)?.from ?? []);
      const isThere = textIfThere(join(folder, fileOf(changes().length + 1))) !== undefined;
      return isThere ? [signer().key, ...past] : past;
    },
    change: (since) => {
      const from = signer();
      const number = changes().length + 1;
      eraseDurably(folder, fileOf(number + 1));
      makeKey(folder, fileOf(number + 1), random);
      const note = keyChangeNote(name, since, from, readSigner(folder, fileOf(number + 1), name));
      writeDurably(folder, CHANGES, `${JSON.stringify({ note })}\n`, 'a');
      eraseOldKeys(folder, number);
      return note;
    },
  };
};

const fileOf = (number: number): string => `${String(number).padStart(4, '0')}.key`;

const makeKey = (folder: string, file: string, random: RandomBytes): void => {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  chmodSync(folder, 0o700);
  writeDurably(folder, file, random(KEY_BYTES).toString('hex'), 'wx');
};

const readSigner = (folder: string, file: string, name: string): Signer => {
  const text = textIfThere(join(folder, file));
  if (text === undefined || !KEY_TEXT.test(text)) throw new SigningKeyUnreadable(join(folder, file));
  return signerOf(name, Buffer.from(text, 'hex'));
};

/** The last note names this key as the one that took over. */
const followsFrom = (changes: readonly string[], { key }: Signer): boolean => {
  const last = changes.at(-1);
  if (last === undefined) return true;
  const change = readKeyChange(last, NOTE_TOOLS);
  return change !== undefined && keyText(change.to) === keyText(key);
};

/** Whoever finds an old key could sign what never was. */
const eraseOldKeys = (folder: string, upTo: number): void => {
  for (const file of readdirSync(folder)) {
    const number = Number(KEY_FILE.exec(file)?.[1] ?? Infinity);
    if (number <= upTo) eraseDurably(folder, file);
  }
};
