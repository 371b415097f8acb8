export * from './beliefs';
export * from './cause';
export * from './gather';
export * from './posterior';
export * from './ranking';
export * from './sources';
export * from './trace-counts';
export * from './trace-rows';
