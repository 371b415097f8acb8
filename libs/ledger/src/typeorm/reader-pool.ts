import type { Sql } from '../port';
import type { Connection } from './sqlite-sql';

/** Each connection serves one query at a time: two long ones on one connection stall the event loop for seconds. */
export const poolOf = (connections: readonly Connection[]): Connection => {
  const idle = [...connections];
  const queue: ((connection: Connection) => void)[] = [];

  const checkOut = (): Promise<Connection> | Connection =>
    idle.pop() ?? new Promise((take) => queue.push(take));

  const giveBack = (connection: Connection): void => {
    const next = queue.shift();
    if (next === undefined) idle.push(connection);
    else next(connection);
  };

  const query: Sql['query'] = async <T>(sql: string, parameters?: readonly unknown[]) => {
    const connection = await checkOut();
    try {
      return await connection.query<T>(sql, parameters);
    } finally {
      giveBack(connection);
    }
  };

  return {
    dialect: 'sqlite',
    query,
    close: async () => {
      for (const connection of connections) await connection.close();
    },
  };
};
