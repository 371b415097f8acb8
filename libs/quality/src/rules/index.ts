export * from './rule-run-length';
export * from './run-rules';
