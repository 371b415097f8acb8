export type { Checkpoints, LedgerTree, StoredEvent } from './ledger-tree';
