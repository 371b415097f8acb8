export { demonstrationFiles } from './demonstration-files';
export { ledgerRoot } from './ledger-root';
export { demoPeople } from './people';
export type { DemoPerson } from './people';
export { simulate } from './simulate';
export type { Progress, Simulated, Simulation } from './simulate';
