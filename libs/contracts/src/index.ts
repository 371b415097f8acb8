export * from './examples';
export * from './openapi';
export * from './routes';
export * from './screens';
export * from './shapes';
export * from './words';
