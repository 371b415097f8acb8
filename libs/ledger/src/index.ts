export * from './fault';
export * from './part';
export * from './port';
export * from './recorded';
export { leafOf } from './writer/envelope';
export { takingTurns } from './writer/turns';
export * from './sealing';
export * from './signing';
export * from './tree';
