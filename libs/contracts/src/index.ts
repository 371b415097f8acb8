export * from './access';
export * from './examples';
export * from './openapi';
export * from './routes';
export * from './quality-screens';
export * from './screens';
export * from './shapes';
export * from './words';
