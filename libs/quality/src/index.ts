export * from './association';
export * from './defect-rates';
export * from './distributions';
export * from './intervals';
export * from './pareto';
export * from './rate';
export * from './survival';
export * from './yields';
