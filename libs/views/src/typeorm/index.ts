export * from './keeper';
export * from './rebuild';
export * from './reader';
