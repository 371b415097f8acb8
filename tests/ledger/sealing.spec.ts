import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import {
  isSealed,
  KeyUnreadable,
  openKeyStore,
  PersonForgotten,
  SealBroken,
  sealingWith,
} from '@libs/ledger';
import { metaFor, put } from '../support/bin';
import { sqliteHouse } from '../support/ledger-house';
import type { LedgerHouse } from '../support/ledger-house';

const place = { stream: 'person/p-1', field: 'name' };

describe('sealed text', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'studbook-keys-'));
  });
  afterEach(() => {
    rmSync(folder, { recursive: true });
  });
  const sealing = (ledger = 'ledger-1') => sealingWith(openKeyStore(folder), ledger);

  it('opens again where it stands, whatever was written and whoever wrote it', () => {
    const { seal, unseal } = sealing();
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.stringMatching(/^[\w:/.-]{1,20}$/), (text, person) => {
        const sealed = seal(person, place, text);
        expect(isSealed(sealed)).toBe(true);
        expect(unseal(sealed, place)).toBe(text);
      }),
      { numRuns: 40 },
    );
  });

  it('has the form sealed:v1:PERSON:base64url, never the same twice', () => {
    const { seal } = sealing();

    const [first, second] = [seal('p-1', place, 'Ada Example'), seal('p-1', place, 'Ada Example')];

    expect(first).toMatch(/^sealed:v1:p-1:[A-Za-z0-9_-]+$/);
    expect(first).not.toBe(second);
  });

  it('opens with the keys as they are read from disk by the next process', () => {
    const sealed = sealing().seal('p-1', place, 'Ada Example');

    expect(sealing().unseal(sealed, place)).toBe('Ada Example');
  });

  it.each([
    ['in another stream', { stream: 'person/p-2', field: 'name' }, 'ledger-1'],
    ['in another field', { stream: 'person/p-1', field: 'note' }, 'ledger-1'],
    ['in another ledger', place, 'ledger-2'],
  ])('does not open %s', (_where, elsewhere, ledger) => {
    const sealed = sealing().seal('p-1', place, 'Ada Example');

    expect(() => sealing(ledger).unseal(sealed, elsewhere)).toThrow(SealBroken);
  });

  it('does not open when it was altered, cut short, or put under another person’s name', () => {
    const { seal, unseal } = sealing();
    const sealed = seal('p-1', place, 'Ada Example');
    seal('p-2', place, 'Ben Example');
    const box = Buffer.from(sealed.split(':')[3] ?? '', 'base64url');

    for (let byte = 0; byte < box.length; byte += 1) {
      const altered = Buffer.from(box);
      altered.writeUInt8(box.readUInt8(byte) ^ 1, byte);
      expect(() => unseal(`sealed:v1:p-1:${altered.toString('base64url')}`, place)).toThrow(SealBroken);
    }
    expect(() => unseal(sealed.slice(0, 30), place)).toThrow(SealBroken);
    expect(() => unseal(sealed.replace('p-1', 'p-2'), place)).toThrow(SealBroken);
    expect(() => unseal('Ada Example', place)).toThrow(SealBroken);
  });

  it('reads as nothing once the person is forgotten, now and after a restart; nothing more is sealed for them', () => {
    const { seal, unseal, forget } = sealing();
    const sealed = seal('p-1', place, 'Ada Example');
    const other = seal('p-2', place, 'Ben Example');

    forget('p-1');
    forget('p-1');

    expect(unseal(sealed, place)).toBeNull();
    expect(() => seal('p-1', place, 'Ada Example')).toThrow(PersonForgotten);
    expect(sealing().unseal(sealed, place)).toBeNull();
    expect(() => sealing().seal('p-1', place, 'Ada Example')).toThrow(PersonForgotten);
    expect(sealing().unseal(other, place)).toBe('Ben Example');
  });

  it('stays forgotten when an older backup of the keys is put back', () => {
    const { seal, forget } = sealing();
    const sealed = seal('p-1', place, 'Ada Example');
    const [file] = readdirSync(join(folder, 'people'));
    const path = join(folder, 'people', file ?? '');
    const backup = readFileSync(path);
    forget('p-1');

    writeFileSync(path, backup);

    expect(sealing().unseal(sealed, place)).toBeNull();
    expect(readdirSync(join(folder, 'people'))).toStrictEqual([]);
  });

  it('keeps its keys for this user’s eyes only, in no file a person’s id could name elsewhere', () => {
    sealing().seal('../../outside', place, 'Ada Example');

    const [file] = readdirSync(join(folder, 'people'));
    expect(file).toMatch(/^[0-9a-f]+\.key$/);
    expect(statSync(join(folder, 'people', file ?? '')).mode & 0o777).toBe(0o600);
    expect(statSync(join(folder, 'digest.key')).mode & 0o777).toBe(0o600);
    expect(statSync(folder).mode & 0o777).toBe(0o700);
  });

  it('names the file when a key cannot be read, rather than making a new one', () => {
    sealing().seal('p-1', place, 'Ada Example');
    const [file] = readdirSync(join(folder, 'people'));
    writeFileSync(join(folder, 'people', file ?? ''), 'not a key');

    expect(() => openKeyStore(folder)).toThrow(KeyUnreadable);
    expect(() => openKeyStore(folder)).toThrow(file);
  });

  it('keeps the key that compares repeated commands from one process to the next', () => {
    expect(openKeyStore(folder).digestKey.equals(openKeyStore(folder).digestKey)).toBe(true);
  });
});

describe('a sealed note in the ledger', () => {
  it('stands nowhere in clear in the ledger’s files, nor does the content it was sent with', async () => {
    const house = sqliteHouse();
    const keys = mkdtempSync(join(tmpdir(), 'studbook-keys-'));
    const ledger = await house.open();
    const { seal, unseal } = sealingWith(openKeyStore(keys), ledger.id);
    const noted = { stream: 'bin/a', field: 'note' };
    const clear = 'Cora Invented hurt her thumb';

    const sealed = seal('p-1', noted, clear);
    const outcome = await ledger.ask({
      parts: [put('a', 1, sealed)],
      meta: metaFor('key-1'),
      content: JSON.stringify({ note: clear }),
    });

    expect(outcome).toMatchObject({ ok: true, events: [{ data: { note: sealed } }] });
    expect(unseal(sealed, noted)).toBe(clear);
    expect(filesOf(house).some((bytes) => bytes.includes('sealed:v1:p-1:'))).toBe(true);
    expect(filesOf(house).some((bytes) => bytes.includes('Invented'))).toBe(false);
    await house.clear();
    rmSync(keys, { recursive: true });
  });
});

/** The database and what stands beside it, the write-ahead log above all. */
const filesOf = ({ at }: LedgerHouse): readonly Buffer[] => {
  const file = 'file' in at ? at.file : '';
  return readdirSync(dirname(file)).map((name) => readFileSync(join(dirname(file), name)));
};
