export * from './keeper';
export * from './rebuild';
