export * from './routes';
export * from './screens';
export * from './shapes';
