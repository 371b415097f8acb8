export type { Access, Listed, SignIn, SignInOffer } from './access';
export { accessOver } from './access-over';
export type { AccessRows, GuessableRow, Holder, SecretRow } from './access-rows';
export type { GuessCost } from './secret';
export type { AccessPlace } from './typeorm/open-access';
export { openAccess, openAccessRows } from './typeorm/open-access';
export type { AccessLog } from './typeorm/open-access-log';
export { openAccessLog } from './typeorm/open-access-log';
