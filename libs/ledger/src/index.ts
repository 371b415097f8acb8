export * from './fault';
export * from './part';
export * from './port';
export * from './recorded';
export { leafOf } from './writer/envelope';
export * from './sealing';
