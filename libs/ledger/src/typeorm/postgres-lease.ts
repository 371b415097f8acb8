import { hostname } from 'node:os';
import { setTimeout as pause } from 'node:timers/promises';
import { WriterElsewhere } from '../fault';
import type { Sql } from '../port';
import type { Lease } from './engine';

/** How long a writer that fell silent keeps the ledger. Long beside a slow disk, short beside a lunch break. */
export const LEASE_MS = 15_000;

/** A lease is renewed three times in its life, so that one lost message does not end it. */
const RENEWALS = 3;

/** How often a writer that waits for another's lease to end looks again. */
const LOOK_AGAIN_MS = 250;

/**
 * Who writes is settled by a row and the database's own clock: an advisory lock is not let go by a process
 * that stands still. A live holder renews within one lease, so waiting longer than that is no use.
 */
export const postgresLease = (sql: Sql, leaseMs: number): Lease => {
  const until = `clock_timestamp() + interval '${leaseMs} milliseconds'`;
  const holder = `${hostname()} process ${process.pid}`;

  const tryToTake = async (ledger: string): Promise<{ readonly epoch: number } | undefined> => {
    const [row] = await sql.query<{ epoch: number }>(
      `UPDATE writer SET epoch = epoch + 1, holder = $2, lease_until = ${until}
       WHERE plant = $1 AND (lease_until IS NULL OR lease_until < clock_timestamp()) RETURNING epoch`,
      [ledger, holder],
    );
    return row;
  };

  return {
    take: async (ledger) => {
      const looks = Math.ceil(leaseMs / LOOK_AGAIN_MS) + 1;
      for (let look = 0; look < looks; look += 1) {
        const taken = await tryToTake(ledger);
        if (taken !== undefined) return taken;
        await pause(LOOK_AGAIN_MS);
      }
      throw await heldElsewhere(sql, ledger);
    },
    renewal: `, lease_until = ${until}`,
    release: ', lease_until = NULL',
    renewEveryMs: leaseMs / RENEWALS,
  };
};

const heldElsewhere = async (sql: Sql, ledger: string): Promise<WriterElsewhere> => {
  const [row] = await sql.query<{ holder: string; until: string }>(
    'SELECT holder, lease_until::text AS until FROM writer WHERE plant = $1',
    [ledger],
  );
  return new WriterElsewhere(ledger, row?.holder ?? 'unknown', row?.until ?? 'an unknown time');
};
