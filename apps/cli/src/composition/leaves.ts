import { OPEN_READONLY } from 'sqlite3';
import { QUIET_DRIVER } from '@libs/ledger/typeorm';
import { DataSource } from 'typeorm';

const PAGE = 5_000;

type Row = { readonly position: number; readonly leaf: Buffer };

/** Every leaf of a ledger's file as it is stored, hex, by position. */
export async function* leavesIn(file: string): AsyncGenerator<string> {
  const source = await new DataSource({
    type: 'sqlite',
    database: file,
    flags: OPEN_READONLY,
    driver: QUIET_DRIVER,
  }).initialize();
  try {
    for (let after = 0; ;) {
      const rows: Row[] = await source.query(
        'SELECT position, leaf FROM event WHERE position > ? ORDER BY position LIMIT ?',
        [after, PAGE],
      );
      for (const { leaf } of rows) yield leaf.toString('hex');
      const last = rows.at(-1);
      if (last === undefined) return;
      after = last.position;
    }
  } finally {
    await source.destroy();
  }
}
