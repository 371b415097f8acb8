import { headsTree, hexOf } from '@libs/proof';
import type { HeadsTree } from '@libs/proof';
import type { Sql } from '../../port';
import { HASHING } from './tree-hashing';

type Row = {
  readonly stream: string;
  readonly version: number;
  readonly position: number;
  readonly leaf: Uint8Array;
};

/**
 * From stream to stream by the index, never over all events: a plant has far fewer streams. Streams that began later
 * have no version yet and drop out.
 */
const HEADS = `
  WITH RECURSIVE named (stream) AS (
    SELECT min(stream) FROM event
    UNION ALL
    SELECT (SELECT min(e.stream) FROM event e WHERE e.stream > named.stream) FROM named WHERE named.stream IS NOT NULL
  ), heads (stream, version) AS (
    SELECT stream, (SELECT e.version FROM event e WHERE e.stream = named.stream AND e.position <= $1
                    ORDER BY e.version DESC LIMIT 1)
    FROM named WHERE stream IS NOT NULL
  )
  SELECT e.stream AS stream, e.version AS version, e.position AS position, e.leaf AS leaf
  FROM heads JOIN event e ON e.stream = heads.stream AND e.version = heads.version
  ORDER BY e.stream`;

export const streamHeadsAt = async (sql: Sql, size: number): Promise<HeadsTree> => {
  const rows = await sql.query<Row>(HEADS, [size]);
  return headsTree(
    HASHING,
    rows.map(({ stream, version, position, leaf }) => ({ stream, version, position, leaf: hexOf(leaf) })),
  );
};
