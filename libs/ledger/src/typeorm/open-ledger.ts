import type { Keeper, Ledger, Sql } from '../port';
import type { Checkpoints, LedgerTree } from '../tree';
import { typed } from '../recorded';
import { Writer } from '../writer/writer';
import type { Engine } from './engine';
import { eventsAfter, eventsOfStreams, headOf } from './event-reading';
import { identify } from './identity';
import { SqlLogStore } from './sql-log-store';
import { openPostgres } from './postgres-engine';
import type { PostgresPlace } from './postgres-engine';
import { LEASE_MS } from './postgres-lease';
import { openSqlite } from './sqlite-engine';
import { assertNobodyWrites } from './sqlite-holder';
import { checkpointsIn } from './tree/checkpoint-rows';
import { treeOf } from './tree/open-tree';
import { keepTilesUp } from './tree/tile-upkeep';

export type LedgerOptions = {
  /** A SQLite file, or a PostgreSQL database; a second ledger there stands in a schema of its own. */
  readonly at: { readonly file: string } | PostgresPlace;
  /** What people call it; only told when it is made. */
  readonly name: string;
  /** Its id when it is made; random where not given. An existing ledger keeps its own. */
  readonly id?: string;
  /** Milliseconds since 1970, UTC. */
  readonly clock: () => number;
  /** `digestKey` of the key store. */
  readonly secret: Buffer;
  readonly keepers: readonly Keeper[];
  /** PostgreSQL only: how long a writer that fell silent keeps the ledger. */
  readonly leaseMs?: number;
  /**
   * SQLite only, and only for a ledger being made whole in a place of its own: commits are not waited for to reach the
   * disk. Whoever makes it has it on disk before it is used, and throws it away if it was not finished.
   */
  readonly inMaking?: boolean;
};

export type OpenLedger = Ledger & {
  /** Read-only SQL for the views' questions. Sees all that is committed. */
  readonly reader: Sql;
  /**
   * A write transaction with no commit in between: making a view's tables, rebuilding them. Throws what
   * `work` throws, with nothing left of it. The keepers' caches are the caller's to drop.
   */
  readonly transaction: <T>(work: (sql: Sql) => Promise<T>) => Promise<T>;
  readonly tree: LedgerTree;
  readonly checkpoints: Checkpoints;
};

/** Opens the ledger as its one writer, making it where there is none. Throws where another that lives writes it. */
export const openLedger = async (options: LedgerOptions): Promise<OpenLedger> => {
  if ('file' in options.at) await assertNobodyWrites(options.at.file);
  const engine = await engineAt(options);
  try {
    if (options.inMaking === true && 'file' in options.at)
      await engine.writer.query('PRAGMA synchronous = OFF');
    return await ledgerOn(engine, options);
  } catch (error) {
    await engine.close();
    throw error;
  }
};

const engineAt = ({ at, leaseMs = LEASE_MS }: LedgerOptions): Promise<Engine> =>
  'file' in at ? openSqlite(at.file) : openPostgres(at, leaseMs);

const ledgerOn = async (engine: Engine, options: LedgerOptions): Promise<OpenLedger> => {
  const { name, clock, secret, keepers } = options;
  const ledger = await identify(engine, name, options.id);
  const store = new SqlLogStore({ ledger, engine, keepers });
  const { epoch } = await engine.lease.take(ledger);
  const tenure = await store.standing(epoch);
  const writer = new Writer({ ledger, store, clock, secret }, tenure);
  const transaction: OpenLedger['transaction'] = (work) => writer.transaction(work);
  const tiles = keepTilesUp({ reader: engine.reader, news: writer.news, transaction }, tenure.head);
  const stopRenewing = renewing(writer, engine.lease.renewEveryMs);
  let closed: Promise<void> | undefined;
  const close = async (): Promise<void> => {
    stopRenewing();
    await writer.close();
    await tiles.stop().finally(() => engine.close());
  };

  return {
    id: ledger,
    ask: (asking) => writer.ask(asking),
    after: (position, limit) => eventsAfter(engine.reader, position, limit),
    ofStreams: (streams) => eventsOfStreams(engine, streams),
    head: () => headOf(engine.reader),
    writes: () => holds(engine, ledger, epoch),
    state: (kind, id) => stateOf(engine, writer, kind, id),
    news: writer.news,
    commits: writer.commits,
    reader: engine.reader,
    transaction,
    tree: treeOf(engine),
    checkpoints: checkpointsIn(engine.reader, transaction),
    close: () => (closed ??= close()),
  };
};

/** Asked of the row itself: a writer with nothing to commit does not hear that another has taken over. */
const holds = async (engine: Engine, ledger: string, epoch: number): Promise<boolean> => {
  const rows = await engine.reader.query('SELECT 1 FROM writer WHERE plant = $1 AND epoch = $2', [
    ledger,
    epoch,
  ]);
  return rows.length > 0;
};

type FoldedKind<S> = {
  readonly name: string;
  readonly initial: S;
  readonly evolve: (state: S, event: never) => S;
};

/** From the writer where it has it at hand, else folded from the log. */
const stateOf = async <S>(engine: Engine, writer: Writer, kind: FoldedKind<S>, id: string): Promise<S> => {
  const stream = `${kind.name}/${id}`;
  const held = writer.held(stream);
  if (held !== undefined) return known(held.state);

  const events = await eventsOfStreams(engine, [stream]);
  return events.reduce((state: S, event) => kind.evolve(state, known(typed(event))), kind.initial);
};

/** What is held or stored under a stream's name was put there by that stream's own kind. */
const known = <T>(value: unknown): T => value as T;

const renewing = (writer: Writer, everyMs: number | undefined): (() => void) => {
  if (everyMs === undefined) return () => undefined;

  const timer = setInterval(() => void writer.renew(), everyMs);
  timer.unref();
  return () => {
    clearInterval(timer);
  };
};
