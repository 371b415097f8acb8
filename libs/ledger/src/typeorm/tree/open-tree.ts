import { consistencyPath, inclusionPath, nodesFromTiles, rootAt, tilesFor } from '@libs/proof';
import type { HeadsTree, NodeSource } from '@libs/proof';
import { envelopeOf } from '../../recorded';
import type { LedgerTree, StoredEvent } from '../../tree';
import type { Engine } from '../engine';
import { PAGE_LIMIT } from '../event-reading';
import { streamHeadsAt } from './stream-heads-at';
import { tileAt } from './tile-rows';
import { HASHING } from './tree-hashing';

type Reading = Pick<Engine, 'reader' | 'among' | 'list'>;

export const treeOf = (engine: Reading): LedgerTree => {
  const { reader } = engine;
  const heads = lastOne((size) => streamHeadsAt(reader, size));

  /** Which tiles the work looks at is found out first; it is then done on them without waiting. */
  const onTree = async <T>(size: number, work: (nodes: NodeSource) => T): Promise<T> => {
    const tiles = new Map<string, Uint8Array>();
    for (const id of tilesFor(work)) tiles.set(`${id.level}/${id.index}`, await tileAt(reader, id, size));
    return work(
      nodesFromTiles(HASHING, ({ level, index }) => tiles.get(`${level}/${index}`) ?? new Uint8Array()),
    );
  };

  return {
    rootAt: (size) => onTree(size, (nodes) => rootAt({ hashing: HASHING, nodes }, size)),
    inclusion: (positions, size) =>
      onTree(size, (nodes) =>
        positions.map((position) => inclusionPath({ hashing: HASHING, nodes }, position - 1, size)),
      ),
    consistency: (earlier, size) =>
      onTree(size, (nodes) =>
        earlier.map((first) => consistencyPath({ hashing: HASHING, nodes }, first, size)),
      ),
    headsAt: heads,
    stored: (streams, upTo) => storedEvents(engine, streams, upTo),
    recordedAt: async (position) => {
      const [row] = await reader.query<{ body: string }>('SELECT body FROM event WHERE position = $1', [
        position,
      ]);
      if (row === undefined) throw new Error(`The ledger has no event at position ${position}`);
      return envelopeOf(row.body).recordedAt;
    },
  };
};

/** Many packets are made at one position; the heads there are the same for all of them. */
const lastOne = (make: (size: number) => Promise<HeadsTree>): ((size: number) => Promise<HeadsTree>) => {
  let held: { readonly size: number; readonly heads: Promise<HeadsTree> } | undefined;
  return (size) => {
    if (held?.size === size) return held.heads;
    const heads = make(size);
    const mine = { size, heads };
    held = mine;
    heads.catch(() => {
      if (held === mine) held = undefined;
    });
    return heads;
  };
};

type Row = Omit<StoredEvent, 'body'> & { readonly body: string };

const storedEvents = async (
  { reader, among, list }: Reading,
  streams: readonly string[],
  upTo: number,
): Promise<readonly StoredEvent[]> => {
  const events: StoredEvent[] = [];
  for (;;) {
    const rows = await reader.query<Row>(
      `SELECT position, stream, version, body, leaf FROM event
       WHERE ${among('stream')} AND position > $2 AND position <= $3 ORDER BY position LIMIT ${PAGE_LIMIT}`,
      [list(streams), events.at(-1)?.position ?? 0, upTo],
    );
    for (const { body, ...rest } of rows) events.push({ ...rest, body: Buffer.from(body) });
    if (rows.length < PAGE_LIMIT) return events;
  }
};
