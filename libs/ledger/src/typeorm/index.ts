export { openLedger } from './open-ledger';
export type { LedgerOptions, OpenLedger } from './open-ledger';
export { readLedger } from './read-ledger';
export type { ReadLedger } from './read-ledger';
export { assertNobodyWrites } from './sqlite-holder';
export { QUIET_DRIVER } from './sqlite-sql';
export { verifyLedger } from './whole/verify-ledger';
export type { WholeLedger } from './whole/verify-ledger';
