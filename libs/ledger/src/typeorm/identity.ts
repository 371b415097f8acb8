import { randomUUID } from 'node:crypto';
import type { Engine } from './engine';

/** The ledger's id, given once when it is made; part of every event ever after. */
export const identify = async (engine: Engine, name: string, id: string = randomUUID()): Promise<string> => {
  const { writer } = engine;
  await writer.query('INSERT INTO ledger (one, id, name) VALUES (1, $1, $2) ON CONFLICT DO NOTHING', [
    id,
    name,
  ]);
  const [row] = await writer.query<{ id: string }>('SELECT id FROM ledger');
  if (row === undefined) throw new Error('The ledger has no identity');

  await writer.query(
    `INSERT INTO writer (plant, epoch, head, holder) VALUES ($1, 0, 0, 'nobody') ON CONFLICT DO NOTHING`,
    [row.id],
  );
  return row.id;
};
