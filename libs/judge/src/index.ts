export * from './entry';
export * from './finding';
export * from './judge';
export * from './plan';
