import type { DataSource } from 'typeorm';

/** SQL is written with `?`; PostgreSQL wants `$1`, `$2`. */
export type Run = <T>(sql: string, parameters?: readonly unknown[]) => Promise<readonly T[]>;

export const runOn = (source: DataSource): Run => {
  const numbered = (sql: string): string => {
    let n = 0;
    return sql.replace(/\?/g, () => `$${String(++n)}`);
  };
  const asSpoken = source.options.type === 'postgres' ? numbered : (sql: string): string => sql;
  return <T>(sql: string, parameters: readonly unknown[] = []) =>
    source.query<readonly T[]>(asSpoken(sql), [...parameters]);
};

/** Numbers come back as text where the column is larger than an integer of the driver's. */
export type Stored = number | string;
export const numberOrNull = (value: Stored | null): number | null => (value === null ? null : Number(value));
