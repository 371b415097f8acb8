import type { Envelope } from '@libs/kernel';
import { WriterSuperseded } from '../fault';
import type { Keeper, Sql } from '../port';
import { envelopeOf } from '../recorded';
import type { AnsweredKey, Commit, LogStore, Tenure } from '../writer/log-store';
import type { Engine } from './engine';
import { eventsBetween } from './event-reading';

/** Events read at once when streams are folded. */
const REPLAY_PAGE = 5_000;

type StoreParts = {
  readonly ledger: string;
  readonly engine: Engine;
  readonly keepers: readonly Keeper[];
};

/** The log in SQL, written over one connection. */
export class SqlLogStore implements LogStore {
  private readonly writer: Sql;

  constructor(private readonly parts: StoreParts) {
    this.writer = parts.engine.writer;
  }

  async standing(epoch: number): Promise<Tenure> {
    const rows = await this.writer.query<{ head: number; body: string | null }>(
      `SELECT w.head AS head, e.body AS body FROM writer w LEFT JOIN event e ON e.position = w.head
       WHERE w.plant = $1 AND w.epoch = $2`,
      [this.parts.ledger, epoch],
    );
    const { head, body } = this.ownRow(rows);
    return { epoch, head, recordedAt: body === null ? '' : envelopeOf(body).recordedAt };
  }

  /** The writer row comes along, so that nothing is decided for a ledger that others hold by now. */
  async answered(keys: readonly string[], epoch: number): Promise<readonly AnsweredKey[]> {
    const { engine, ledger } = this.parts;
    const rows = await this.writer.query<{ [F in keyof AnsweredKey]: AnsweredKey[F] | null }>(
      `SELECT a.key AS key, a.digest AS digest, a.first AS first, a.events AS count
       FROM writer w LEFT JOIN asking a ON ${engine.among('a.key')} WHERE w.plant = $2 AND w.epoch = $3`,
      [engine.list(keys), ledger, epoch],
    );
    this.ownRow(rows);
    return rows.flatMap(({ key, digest, first, count }) =>
      key === null || digest === null || first === null || count === null
        ? []
        : [{ key, digest, first, count }],
    );
  }

  events(first: number, count: number): Promise<readonly Envelope[]> {
    return eventsBetween(this.writer, first, first + count - 1);
  }

  async replay(streams: readonly string[], each: (event: Envelope) => void): Promise<void> {
    const { engine } = this.parts;
    let last: Pick<Envelope, 'stream' | 'version'> = { stream: '', version: 0 };
    for (;;) {
      const rows = await this.writer.query<{ body: string }>(
        `SELECT body FROM event WHERE ${engine.among('stream')} AND (stream, version) > ($2, $3)
         ORDER BY stream, version LIMIT ${REPLAY_PAGE}`,
        [engine.list(streams), last.stream, last.version],
      );
      for (const { body } of rows) {
        const event = envelopeOf(body);
        each(event);
        last = event;
      }
      if (rows.length < REPLAY_PAGE) return;
    }
  }

  async commit(commit: Commit): Promise<void> {
    const { engine, keepers } = this.parts;
    // Each statement is handed to another thread and back: with nothing to add to it, one is enough.
    if (keepers.length === 0 && engine.recordsAlone) return this.record(commit);
    try {
      await this.inTransaction(async () => {
        await this.record(commit);
        for (const keeper of keepers) await keeper.keep(commit.events.envelopes, this.writer);
      });
    } catch (error) {
      for (const keeper of keepers) keeper.dropped();
      throw error;
    }
  }

  transaction<T>(epoch: number, work: (sql: Sql) => Promise<T>): Promise<T> {
    return this.inTransaction(async () => {
      await this.renew(epoch);
      return work(this.writer);
    });
  }

  async renew(epoch: number): Promise<void> {
    const { engine, ledger } = this.parts;
    const rows = await this.writer.query(
      `UPDATE writer SET head = head${engine.lease.renewal} WHERE plant = $1 AND epoch = $2 RETURNING head`,
      [ledger, epoch],
    );
    this.ownRow(rows);
  }

  async release(epoch: number): Promise<void> {
    const { engine, ledger } = this.parts;
    await this.writer.query(
      `UPDATE writer SET head = head${engine.lease.release} WHERE plant = $1 AND epoch = $2`,
      [ledger, epoch],
    );
  }

  private async record(commit: Commit): Promise<void> {
    const { engine, ledger } = this.parts;
    if (!(await engine.record(ledger, commit))) throw new WriterSuperseded(ledger);
  }

  private async inTransaction<T>(work: () => Promise<T>): Promise<T> {
    const { engine } = this.parts;
    await engine.begin();
    try {
      const result = await work();
      await engine.commit();
      return result;
    } catch (error) {
      await engine.rollback();
      throw error;
    }
  }

  /** The writer row names our epoch, or it is no longer ours. */
  private ownRow<T>(rows: readonly T[]): T {
    const [row] = rows;
    if (row === undefined) throw new WriterSuperseded(this.parts.ledger);
    return row;
  }
}
