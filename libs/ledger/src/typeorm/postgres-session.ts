import type { DataSource } from 'typeorm';
import type { PoolClient } from 'pg';
import type { Sql } from '../port';
import { CommitUncertain } from '../writer/log-store';

/** The writer's own session: one connection, got anew after it was lost. */
export type Session = {
  readonly sql: Sql;
  readonly begin: () => Promise<void>;
  readonly commit: () => Promise<void>;
  readonly rollback: () => Promise<void>;
};

/** PostgreSQL gives every error of its own a code of five characters; a broken connection has none. */
const SQL_STATE = /^[0-9A-Z]{5}$/;
/** Classes of codes that say that the session itself came to an end. */
const SESSION_ENDED = /^(?:08|57P)/;

export const sessionOn = (source: DataSource): Session => {
  let runner = source.createQueryRunner();

  const client = async (): Promise<PoolClient> => {
    // The driver lets a connection go that was lost; whatever transaction it had went with it.
    if (runner.isReleased) runner = source.createQueryRunner();
    return (await runner.connect()) as PoolClient;
  };

  const query = async <T>(sql: string, parameters: readonly unknown[] = []): Promise<readonly T[]> => {
    const { rows } = await (await client()).query(sql, [...parameters]);
    return rows as T[];
  };

  /** A transaction that failed inside answers COMMIT with ROLLBACK, and no error. */
  const commit = async (): Promise<void> => {
    const { command } = await (await client()).query('COMMIT').catch((error: unknown) => {
      throw isDefinite(error) ? error : new CommitUncertain({ cause: error });
    });
    if (command !== 'COMMIT') throw new Error(`The transaction ended with ${command}, not with COMMIT`);
  };

  return {
    sql: { dialect: 'postgres', query },
    begin: async () => {
      await query('BEGIN');
    },
    commit,
    rollback: async () => {
      // A session that cannot even roll back is closed; the server then undoes what it had begun.
      await query('ROLLBACK').catch(() => runner.release());
    },
  };
};

const isDefinite = (error: unknown): boolean => {
  if (!(error instanceof Error) || !('code' in error) || typeof error.code !== 'string') return false;
  return SQL_STATE.test(error.code) && !SESSION_ENDED.test(error.code);
};
