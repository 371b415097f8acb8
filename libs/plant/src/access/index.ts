export type { Access, SignIn, SignInOffer } from './access';
export { accessOver } from './access';
export type { AccessRows, Holder, PinRow, SecretRow } from './access-rows';
export type { PinCost } from './secret';
export type { AccessPlace } from './typeorm/open-access';
export { openAccess } from './typeorm/open-access';
