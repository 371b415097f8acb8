import { AppendOnlyLog } from './0001-append-only-log';

/** In order. A released one is never edited; a change is a new one. */
export const MIGRATIONS = [AppendOnlyLog];
export const MIGRATIONS_TABLE = 'ledger_migration';
