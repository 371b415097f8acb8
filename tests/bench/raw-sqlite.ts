import { Database } from 'sqlite3';
import type { Statement } from 'sqlite3';

/** The driver itself, with nothing of ours around it. */
export type RawSqlite = {
  readonly prepare: (sql: string) => Promise<(parameters?: readonly unknown[]) => Promise<void>>;
  readonly exec: (sql: string) => Promise<void>;
  readonly close: () => Promise<void>;
};

type Done = (error: Error | null) => void;

const settled = (call: (done: Done) => void): Promise<void> =>
  new Promise((done, fail) => {
    call((error) => {
      if (error === null) done();
      else fail(error);
    });
  });

export const openRaw = async (file: string): Promise<RawSqlite> => {
  const database = await new Promise<Database>((done, fail) => {
    const opened: Database = new Database(file, (error) => {
      if (error === null) done(opened);
      else fail(error);
    });
  });
  const statements: Statement[] = [];
  return {
    prepare: async (sql) => {
      let statement: Statement | undefined;
      await settled((done) => {
        statement = database.prepare(sql, done);
      });
      if (statement === undefined) throw new Error(`Not prepared: ${sql}`);
      const prepared = statement;
      statements.push(prepared);
      return (parameters = []) => settled((done) => prepared.run(parameters, done));
    },
    exec: (sql) => settled((done) => database.exec(sql, done)),
    close: async () => {
      for (const statement of statements) await new Promise<void>((done) => statement.finalize(() => done()));
      await settled((done) => database.close(done));
    },
  };
};
