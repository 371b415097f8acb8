export * from './kaplan-meier';
export * from './log-rank';
export * from './mean-cumulative';
