export { openLedger } from './open-ledger';
export type { LedgerOptions, OpenLedger } from './open-ledger';
