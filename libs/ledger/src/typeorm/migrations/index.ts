import { AppendOnlyLog } from './0001-append-only-log';
import { OneStatementCommit } from './0002-one-statement-commit';
import { TreeAndCheckpoints } from './0003-tree-and-checkpoints';

/** In order. A released one is never edited; a change is a new one. */
export const MIGRATIONS = [AppendOnlyLog, OneStatementCommit, TreeAndCheckpoints];
export const MIGRATIONS_TABLE = 'ledger_migration';
