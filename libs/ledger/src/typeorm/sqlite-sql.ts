import * as sqlite3 from 'sqlite3';
import { DataSource } from 'typeorm';
import type { DataSourceOptions } from 'typeorm';
import { SqliteDriver } from 'typeorm/driver/sqlite/SqliteDriver';
import type { Database, Statement } from 'sqlite3';
import type { Sql } from '../port';
import { takingTurns } from '../writer/turns';

export type Connection = Sql & { readonly close: () => Promise<void> };

type SqliteOptions = Omit<Extract<DataSourceOptions, { type: 'sqlite' }>, 'type' | 'driver'>;

/**
 * Left to itself TypeORM asks the driver to be verbose, for all connections there are: every call then writes its
 * parameters down in case it fails. That took a third of the writer's time, and put what was sent into error texts.
 */
export const QUIET_DRIVER: Pick<typeof sqlite3, 'Database'> & { verbose: () => unknown } = {
  ...sqlite3,
  verbose: () => QUIET_DRIVER,
};

/** Statements kept prepared on one connection. Above what the ledger and all views together speak. */
const STATEMENTS_KEPT = 400;

/**
 * A SQLite connection with its statements kept prepared. A prepared statement is not ordered by the driver's
 * `serialize()`: un-awaited, a COMMIT overtook its BEGIN. So each one waits for the one before it.
 */
export const connectSqlite = async (
  options: SqliteOptions,
  pragmas: readonly string[],
): Promise<Connection> => {
  const source = await new DataSource({ ...options, type: 'sqlite', driver: QUIET_DRIVER }).initialize();
  const database = databaseOf(source);
  database.serialize();
  const statements = new Map<string, Statement>();
  const inTurn = takingTurns();

  const statementFor = async (sql: string): Promise<Statement> => {
    const kept = statements.get(sql);
    if (kept !== undefined) return kept;

    if (statements.size >= STATEMENTS_KEPT) await dropOldest(statements);
    const statement = await prepare(database, sql.replace(NUMBERED, '?$1'));
    statements.set(sql, statement);
    return statement;
  };

  const connection: Connection = {
    dialect: 'sqlite',
    query: <T>(sql: string, parameters: readonly unknown[] = []) =>
      inTurn(async () => rowsOf<T>(await statementFor(sql), parameters)),
    close: () =>
      inTurn(async () => {
        for (const statement of statements.values()) await finalize(statement);
        await source.destroy();
      }),
  };
  for (const pragma of pragmas) await connection.query(`PRAGMA ${pragma}`);
  return connection;
};

/** Parameters are numbered `$1` on both engines; SQLite calls that `?1`. */
const NUMBERED = /\$(\d+)/g;

const databaseOf = (source: DataSource): Database => {
  if (!(source.driver instanceof SqliteDriver)) throw new Error('Not a SQLite data source');
  return source.driver.databaseConnection as Database;
};

const prepare = (database: Database, sql: string): Promise<Statement> =>
  new Promise((done, fail) => {
    const statement = database.prepare(sql, (error) => {
      if (error) fail(inSql(error, sql));
      else done(statement);
    });
  });

const rowsOf = <T>(statement: Statement, parameters: readonly unknown[]): Promise<readonly T[]> =>
  new Promise((done, fail) => {
    statement.all<T>(parameters, (error, rows) => {
      if (error) fail(error);
      else done(rows);
    });
  });

const finalize = (statement: Statement): Promise<void> =>
  new Promise((done) => {
    statement.finalize(() => {
      done();
    });
  });

const dropOldest = async (statements: Map<string, Statement>): Promise<void> => {
  for (const [sql, statement] of statements) {
    statements.delete(sql);
    await finalize(statement);
    return;
  }
};

const inSql = (cause: Error, sql: string): Error => new Error(`${cause.message} in: ${sql}`, { cause });
