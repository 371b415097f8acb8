export * from './change-point';
export * from './event-trends';
