import { createHash } from 'node:crypto';
import { extendsTree, headsTree, hexOf, includes, isAbsent, isHead, rootAt, treeOver } from '@libs/proof';
import type { OpenLedger } from '@libs/ledger/typeorm';
import { askedOf, put } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';
import { HASHING } from '../support/proof-tools';

/** Over 16 full tiles, so that tiles are kept, and some more that are not. */
const MANY = 4_700;

const grown = async (ledger: OpenLedger, count: number): Promise<void> => {
  const each = 20;
  const tellings = Array.from({ length: Math.ceil(count / each) }, (_, n) => n);
  await Promise.all(
    tellings.map((n) =>
      askedOf(ledger, `key-${n}`, ...Array.from({ length: each }, (_, k) => put(`b${(n + k) % 33}`))),
    ),
  );
};

/** Hashed anew from the stored texts by node:crypto, and put into a tree held in memory. */
const treeInMemory = async (ledger: OpenLedger) => {
  const rows = await ledger.reader.query<{ body: string }>('SELECT body FROM event ORDER BY position');
  const leaves = rows.map(({ body }) => createHash('sha256').update('\u0000').update(body).digest());
  return { leaves, tree: treeOver(HASHING, leaves) };
};

export const treeSuite = (house: () => LedgerHouse): void => {
  it('proves at any size that any event is in it, and that it only grew, from tiles and edge alike', async () => {
    const ledger = await house().open();
    await grown(ledger, MANY);
    await ledger.close();
    const reopened = await house().open();
    const { leaves, tree } = await treeInMemory(reopened);

    for (const size of [1, 2, 255, 256, 257, 4_095, 4_096, 4_097, MANY]) {
      const root = await reopened.tree.rootAt(size);
      const positions = [1, Math.ceil(size / 3), size];
      const paths = await reopened.tree.inclusion(positions, size);

      expect(hexOf(root)).toBe(hexOf(rootAt(tree, size)));
      for (const [n, position] of positions.entries()) {
        const inclusion = { index: position - 1, size, leaf: leaves[position - 1]!, path: paths[n]! };
        expect(includes(HASHING, inclusion, root)).toBe(true);
      }
      const [path] = await reopened.tree.consistency([size], MANY);
      const second = { size: MANY, root: rootAt(tree, MANY) };
      expect(extendsTree(HASHING, { first: { size, root }, second, path: path! })).toBe(true);
    }
  });

  it('keeps full tiles as it grows, and nobody changes one through the ledger’s own database', async () => {
    const ledger = await house().open();
    await grown(ledger, MANY);
    await ledger.close();
    const reopened = await house().open();

    const [row] = await reopened.reader.query<{ tiles: number }>('SELECT count(*) AS tiles FROM tile');

    expect(Number(row?.tiles)).toBeGreaterThanOrEqual(16);
    await expect(house().tamper('DELETE FROM tile')).rejects.toThrow(/only grows/);
  });

  it('says how far every stream went when it was so long, in the order of their names byte by byte', async () => {
    const ledger = await house().open();
    for (const [n, name] of ['b', 'a', '\u{1f3e0}', '\ufb01', 'b', 'a', 'c'].entries())
      await askedOf(ledger, `key-${n}`, put(name));
    const rows = await ledger.reader.query<{
      stream: string;
      version: number;
      position: number;
      leaf: Buffer;
    }>('SELECT stream, version, position, leaf FROM event ORDER BY position');
    const at5 = new Map(rows.slice(0, 5).map((row) => [row.stream, row]));
    const expected = ['bin/a', 'bin/b', 'bin/\ufb01', 'bin/\u{1f3e0}'].map((name) => {
      const { stream, version, position, leaf } = at5.get(name)!;
      return { stream, version, position, leaf: leaf.toString('hex') };
    });

    const heads = await ledger.tree.headsAt(5);

    expect(hexOf(heads.root)).toBe(hexOf(headsTree(HASHING, expected).root));
    const proof = heads.proofOf('bin/b')!;
    expect(proof.head).toStrictEqual(expected[1]);
    expect(isHead(HASHING, proof, heads)).toBe(true);
    expect(isAbsent(HASHING, 'bin/c', heads.absenceOf('bin/c')!, heads)).toBe(true);
    expect((await ledger.tree.headsAt(7)).absenceOf('bin/c')).toBeUndefined();
  });

  it('keeps one checkpoint a size for ever', async () => {
    const ledger = await house().open();
    await askedOf(ledger, 'key-1', put('a'));

    expect(await ledger.checkpoints.keep(1, 'first')).toBe('first');
    expect(await ledger.checkpoints.keep(1, 'second')).toBe('first');
    expect(await ledger.checkpoints.latest()).toBe('first');
    await expect(house().tamper(`UPDATE checkpoint SET note = 'x'`)).rejects.toThrow(/only grows/);
  });
};
