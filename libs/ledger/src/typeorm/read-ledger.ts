import { NEVER } from 'rxjs';
import type { Ledger } from '../port';
import { typed } from '../recorded';
import type { Engine } from './engine';
import { eventsAfter, eventsOfStreams, headOf } from './event-reading';
import type { LedgerOptions, OpenLedger } from './open-ledger';
import { openPostgres } from './postgres-engine';
import { LEASE_MS } from './postgres-lease';
import { openSqlite } from './sqlite-engine';
import { checkpointsIn } from './tree/checkpoint-rows';
import { treeOf } from './tree/open-tree';

export type ReadLedger = Ledger & Pick<OpenLedger, 'reader' | 'tree' | 'checkpoints'>;

/** Opens a ledger that exists for reading only: its writer, in this process or another, is not disturbed. */
export const readLedger = async (at: LedgerOptions['at']): Promise<ReadLedger> => {
  const engine = await ('file' in at ? openSqlite(at.file) : openPostgres(at, LEASE_MS));
  try {
    return await readingFrom(engine);
  } catch (error) {
    await engine.close();
    throw error;
  }
};

const readingFrom = async (engine: Engine): Promise<ReadLedger> => {
  const [row] = await engine.reader.query<{ readonly id: string }>('SELECT id FROM ledger');
  if (row === undefined) throw new Error('There is no ledger in this database yet');

  return {
    id: row.id,
    ask: () => Promise.reject(new Error('This ledger was opened for reading only')),
    after: (position, limit) => eventsAfter(engine.reader, position, limit),
    ofStreams: (streams) => eventsOfStreams(engine, streams),
    head: () => headOf(engine.reader),
    writes: () => Promise.resolve(false),
    state: async (kind, id) => {
      const events = await eventsOfStreams(engine, [`${kind.name}/${id}`]);
      return events.reduce((state, event) => kind.evolve(state, ofItsKind(typed(event))), kind.initial);
    },
    news: NEVER,
    commits: NEVER,
    reader: engine.reader,
    tree: treeOf(engine),
    checkpoints: checkpointsIn(engine.reader, (work) => work(engine.writer)),
    close: () => engine.close(),
  };
};

/** In a stream stand events of its own kind and nothing else: its own decider wrote them. */
const ofItsKind = (event: unknown): never => event as never;
