export * from './fisher';
export * from './mantel-haenszel';
export * from './many-tests';
export * from './poisson-rates';
export * from './proportions';
export * from './risk';
export * from './two-by-two';
