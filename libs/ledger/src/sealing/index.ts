export * from './key-store';
export * from './sealing';
