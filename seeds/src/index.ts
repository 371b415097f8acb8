export { demonstrationFiles, lastDayFor } from './demonstration-files';
export { demonstrationRandom } from './demonstration-random';
export { ledgerRoot } from './ledger-root';
export { demoPeople, signIns } from './people';
export type { DemoPerson } from './people';
export { simulate } from './simulate';
export type { Progress, Simulated, Simulation } from './simulate';
