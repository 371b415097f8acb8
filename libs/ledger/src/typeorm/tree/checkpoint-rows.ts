import type { Sql } from '../../port';
import type { Checkpoints } from '../../tree';

/**
 * `write` runs where writing is safe beside the writer's own transactions. Whoever signs need not hold the writer row:
 * what a ledger of some size looks like is the same for everyone.
 */
export const checkpointsIn = (
  reader: Sql,
  write: (work: (sql: Sql) => Promise<void>) => Promise<void>,
): Checkpoints => {
  const at = async (size: number): Promise<string | undefined> => {
    const [row] = await reader.query<{ note: string }>('SELECT note FROM checkpoint WHERE size = $1', [size]);
    return row?.note;
  };
  return {
    at,
    sizesUpTo: async (size, limit) => {
      const rows = await reader.query<{ size: number }>(
        'SELECT size FROM checkpoint WHERE size <= $1 ORDER BY size DESC LIMIT $2',
        [size, limit],
      );
      return rows.map((row) => row.size);
    },
    latest: async () => {
      const [row] = await reader.query<{ note: string }>(
        'SELECT note FROM checkpoint ORDER BY size DESC LIMIT 1',
      );
      return row?.note;
    },
    keep: async (size, note) => {
      await write(async (sql) => {
        await sql.query('INSERT INTO checkpoint (size, note) VALUES ($1, $2) ON CONFLICT DO NOTHING', [
          size,
          note,
        ]);
      });
      const kept = await at(size);
      if (kept === undefined) throw new Error(`The checkpoint of size ${size} was not kept`);
      return kept;
    },
  };
};
