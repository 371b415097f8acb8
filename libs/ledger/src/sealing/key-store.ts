import { randomBytes } from 'node:crypto';
import { chmodSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { Fault } from '../fault';
import { eraseDurably, textIfThere, writeDurably } from './durable-file';

/** Keys of 32 bytes, kept apart from the database and backed up apart from it. */
export type KeyStore = {
  /** Key of the digest that compares a repeated idempotency key. */
  readonly digestKey: Buffer;
  /** The person's key; made, and on disk, before it is returned for the first time. */
  readonly keyFor: (person: string) => Buffer;
  /** The person's key where there is one. */
  readonly keyIfKept: (person: string) => Buffer | undefined;
  /** Erases the person's key for good: what is sealed under it can never be read again. */
  readonly forget: (person: string) => void;
};

/** Where keys and nonces come from. Another than the system's is for a demonstration that must come out the same. */
export type RandomBytes = (length: number) => Buffer;

export class PersonForgotten extends Fault {
  constructor(person: string) {
    super(
      `The key of person ${person} was erased; nothing more can be sealed for them. Enroll them anew.`,
      'do-not-send-again',
    );
  }
}

export class KeyUnreadable extends Fault {
  constructor(file: string) {
    super(
      `${file} does not hold a key of ${KEY_BYTES} bytes in hex. Restore it from its backup.`,
      'send-again',
    );
  }
}

const KEY_BYTES = 32;
const KEY_TEXT = /^[0-9a-f]{64}$/;

/**
 * One file a key, for this user's eyes only. Reading all of them on opening keeps the disk out of the hot path:
 * a plant has some hundred people. Erasures are a list of their own beside the keys, done again on opening,
 * so that a restored backup of the keys does not bring an erased person back.
 */
export const openKeyStore = (folder: string, random: RandomBytes = randomBytes): KeyStore => {
  const people = join(folder, 'people');
  mkdirSync(people, { recursive: true, mode: 0o700 });
  chmodSync(folder, 0o700);

  const erased = erasedIn(folder);
  for (const person of erased) eraseDurably(people, fileOf(person));
  const keys = new Map(
    readdirSync(people).map((file) => [personOf(file), readKey(join(people, file))] as const),
  );

  return {
    digestKey: readKeyIfThere(join(folder, DIGEST_KEY)) ?? makeKey(folder, DIGEST_KEY, random),
    keyFor: (person) => {
      const kept = keys.get(person);
      if (kept !== undefined) return kept;
      if (erased.has(person)) throw new PersonForgotten(person);

      const key = makeKey(people, fileOf(person), random);
      keys.set(person, key);
      return key;
    },
    keyIfKept: (person) => keys.get(person),
    forget: (person) => {
      // The list first: after a crash in between, the next opening finishes the erasure.
      writeDurably(folder, ERASED, `${JSON.stringify(person)}\n`, 'a');
      erased.add(person);
      keys.delete(person);
      eraseDurably(people, fileOf(person));
    },
  };
};

const DIGEST_KEY = 'digest.key';
const ERASED = 'erased.jsonl';

/** Ids are opaque: as hex, none of them can name a file elsewhere. */
const fileOf = (person: string): string => `${Buffer.from(person).toString('hex')}.key`;
const personOf = (file: string): string => Buffer.from(file.replace(/\.key$/, ''), 'hex').toString();

const erasedIn = (folder: string): Set<string> => {
  const lines = (textIfThere(join(folder, ERASED)) ?? '').split('\n').filter((line) => line !== '');
  return new Set(lines.map((line) => String(JSON.parse(line))));
};

const makeKey = (folder: string, name: string, random: RandomBytes): Buffer => {
  const key = random(KEY_BYTES);
  writeDurably(folder, name, key.toString('hex'), 'wx');
  return key;
};

const readKeyIfThere = (path: string): Buffer | undefined => {
  const text = textIfThere(path);
  if (text === undefined) return undefined;
  if (!KEY_TEXT.test(text)) throw new KeyUnreadable(path);
  return Buffer.from(text, 'hex');
};

const readKey = (path: string): Buffer => {
  const key = readKeyIfThere(path);
  if (key === undefined) throw new KeyUnreadable(path);
  return key;
};
