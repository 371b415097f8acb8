import { checkpointText, originOf, signedNote } from '@libs/proof';
import type { Outcome } from '@libs/proof';
import { verifyLedger } from '@libs/ledger/typeorm';
import type { OpenLedger } from '@libs/ledger/typeorm';
import type { Sql } from '@libs/ledger';
import fc from 'fast-check';
import { leafOf } from '@libs/ledger';
import { askedOf, put } from '../support/bin';
import type { LedgerHouse, Owner } from '../support/ledger-house';
import { signerFrom } from '../support/proof-tools';

/**
 * Goal: whatever the database's owner does to the ledger by SQL, triggers dropped first, is found and named.
 * Method: a small ledger with tiles and two checkpoints; each random edit is made in a transaction, the whole ledger is
 * verified inside of it, and it is rolled back. fast-check prints the seed of a failure.
 */
const EVENTS = 4_200;
const SIGNED = [300, 4_150] as const;

type Edit = {
  readonly what: string;
  /** SQL that makes it, at this position, with some random number. */
  readonly sql: (position: number, any: number, sql: Sql) => Promise<readonly string[]>;
  /** What must be said of it. */
  readonly named: (position: number, any: number) => readonly string[];
};

const said = (outcomes: readonly Outcome[]): readonly string[] =>
  outcomes
    .filter(({ is }) => is === 'failed')
    .map(({ code, place }) => `${code} ${place.position ?? ''}`.trim());

const textOf = (text: string): string => `'${text.replaceAll("'", "''")}'`;
const other = (position: number, any: number): number => ((position + (any % (EVENTS - 2))) % EVENTS) + 1;

const bodyAt = async (sql: Sql, position: number): Promise<string> => {
  const [row] = await sql.query<{ body: string }>(`SELECT body FROM event WHERE position = ${position}`);
  return row?.body ?? '';
};
const hexOf = (leaf: Buffer, { dialect }: Sql): string =>
  dialect === 'sqlite' ? `x'${leaf.toString('hex')}'` : `'\\x${leaf.toString('hex')}'::bytea`;

/** One bit of one letter, as far as the result is still text. */
const flipped = (body: string, any: number): string => {
  const at = any % body.length;
  const code = body.charCodeAt(at) ^ (1 << (any % 5));
  return body.slice(0, at) + String.fromCharCode(code === 0 ? 1 : code) + body.slice(at + 1);
};

const EDITS: readonly Edit[] = [
  {
    what: 'one flipped bit of an event',
    sql: async (position, any, sql) => [
      `UPDATE event SET body = ${textOf(flipped(await bodyAt(sql, position), any))} WHERE position = ${position}`,
    ],
    named: (position) => [`row-altered ${position}`],
  },
  {
    what: 'one flipped bit of an event, its hash made anew',
    sql: async (position, any, sql) => {
      const body = (await bodyAt(sql, position)).replace('"count":1', `"count":${(any % 9) + 2}`);
      return [
        `UPDATE event SET body = ${textOf(body)}, leaf = ${hexOf(leafOf(body), sql)} WHERE position = ${position}`,
      ];
    },
    // Where no tile lies over it yet, only the checkpoint tells.
    named: (position) => [position <= 4_096 ? `row-altered ${position}` : 'checkpoint-contradicted'],
  },
  {
    what: 'a dropped event',
    sql: (position) => Promise.resolve([`DELETE FROM event WHERE position = ${position}`]),
    named: (position) => [`row-missing ${position}`],
  },
  {
    what: 'a dropped event, all later ones moved up, the head too',
    sql: (position) =>
      Promise.resolve([
        `DELETE FROM event WHERE position = ${position}`,
        // By way of negative numbers, since a position is never there twice.
        `UPDATE event SET position = -position WHERE position > ${position}`,
        `UPDATE event SET position = -position - 1 WHERE position < 0`,
        `UPDATE writer SET head = head - 1`,
      ]),
    named: (position) => (position === EVENTS ? [] : [`row-misplaced ${position}`]),
  },
  {
    what: 'an added event',
    sql: (position, any, sql) => {
      const body = `{"data":{},"position":${EVENTS + 1 + (any % 3)}}`;
      return Promise.resolve([
        `INSERT INTO event (position, stream, version, body, leaf)
         VALUES (${EVENTS + 1 + (any % 3)}, 'bin/new-${position}', 1, ${textOf(body)}, ${hexOf(leafOf(body), sql)})`,
      ]);
    },
    named: (_position, any) => [`row-added ${EVENTS + 1 + (any % 3)}`],
  },
  {
    what: 'two events that changed places',
    sql: (position, any) => {
      const [a, b] = [position, other(position, any)];
      return Promise.resolve([
        `UPDATE event SET position = -1 WHERE position = ${a}`,
        `UPDATE event SET position = ${a} WHERE position = ${b}`,
        `UPDATE event SET position = ${b} WHERE position = -1`,
      ]);
    },
    named: (position, any) => [`row-misplaced ${position}`, `row-misplaced ${other(position, any)}`],
  },
  {
    what: 'an event that holds the text of another',
    sql: async (position, any, sql) => {
      const body = await bodyAt(sql, other(position, any));
      return [
        `UPDATE event SET body = ${textOf(body)}, leaf = ${hexOf(leafOf(body), sql)} WHERE position = ${position}`,
      ];
    },
    named: (position) => [`row-misplaced ${position}`],
  },
  {
    what: 'a checkpoint of a foreign key',
    sql: (_position, any) => {
      const size = SIGNED[any % 2] ?? 0;
      const forger = signerFrom(originOf('test-ledger'), Buffer.alloc(32, any % 250));
      const text = checkpointText({
        origin: originOf('test-ledger'),
        size,
        root: Buffer.alloc(32, any % 256),
      });
      return Promise.resolve([
        `UPDATE checkpoint SET note = ${textOf(signedNote(text, [forger]))} WHERE size = ${size}`,
      ]);
    },
    named: () => ['checkpoint-altered'],
  },
  {
    what: 'a tile with one flipped bit',
    sql: async (position, any, sql) => {
      const where = `level = 0 AND number = ${position % 16}`;
      const [tile] = await sql.query<{ hashes: Buffer }>(`SELECT hashes FROM tile WHERE ${where}`);
      const hashes = Buffer.from(tile?.hashes ?? []);
      hashes[any % hashes.length]! ^= 1 << (any % 8);
      return [`UPDATE tile SET hashes = ${hexOf(hashes, sql)} WHERE ${where}`];
    },
    named: () => ['tile-altered'],
  },
  {
    what: 'the last events taken out, the head moved back',
    sql: (_position, any) => {
      const left = 4_149 - (any % 40);
      return Promise.resolve([
        `DELETE FROM event WHERE position > ${left}`,
        `UPDATE writer SET head = ${left}`,
      ]);
    },
    named: () => ['checkpoint-beyond'],
  },
];

const grown = async (ledger: OpenLedger): Promise<void> => {
  const tellings = Array.from({ length: EVENTS / 20 }, (_, n) => n);
  await Promise.all(
    tellings.map((n) =>
      askedOf(ledger, `key-${n}`, ...Array.from({ length: 20 }, (_, k) => put(`b${(n + k) % 33}`, 1))),
    ),
  );
};

const signed = async (ledger: OpenLedger, size: number): Promise<void> => {
  const origin = originOf(ledger.id);
  const [root, heads] = [await ledger.tree.rootAt(size), await ledger.tree.headsAt(size)];
  await ledger.checkpoints.keep(size, signedNote(checkpointText({ origin, size, root, heads }), [PLANT_KEY]));
};
const PLANT_KEY = signerFrom(originOf('test-ledger'), Buffer.alloc(32, 251));

/** Of each of the ten kinds, so that each database sees a thousand. `TAMPER_RUNS=1000` tries ten times as many. */
export const RANDOM_EDITS = Number(process.env['TAMPER_RUNS'] ?? 100);

/** `runs`: random edits of each kind. */
export const tamperSuite = (name: string, newHouse: () => Promise<LedgerHouse>, runs: number): void => {
  describe(`a ledger on ${name} that its owner edits`, () => {
    let house: LedgerHouse;
    let owner: Owner;
    beforeAll(async () => {
      house = await newHouse();
      const ledger = await house.open({ id: 'test-ledger' });
      await grown(ledger);
      for (const size of SIGNED) await signed(ledger, size);
      await ledger.close();
      owner = await house.owner();
    }, 120_000);
    afterAll(async () => {
      await owner.close();
      await house.clear();
    });

    const verified = () => verifyLedger({ sql: owner.sql, keys: [PLANT_KEY.key] });

    it('is proven in every point as long as nobody does', async () => {
      const outcomes = await verified();

      expect(outcomes.map(({ is, code }) => `${is} ${code}`)).toStrictEqual([
        'proven ledger-gapless',
        'proven tiles-agree',
        'proven checkpoints-agree',
        'open beyond-checkpoint',
        'open checkpoint-kept-elsewhere',
      ]);
    });

    it.each(EDITS)(
      'shows $what, and where',
      async ({ sql, named }) => {
        const position = fc.integer({ min: 1, max: 4_149 });
        await fc.assert(
          fc.asyncProperty(position, fc.nat(1_000_000), async (at, any) => {
            const found = await owner.trying(await sql(at, any, owner.sql), async () =>
              said(await verified()),
            );

            expect(found).toStrictEqual(expect.arrayContaining([...named(at, any)]));
            expect(found.length).toBeGreaterThan(0);
          }),
          { numRuns: runs },
        );
      },
      600_000,
    );
  });
};
