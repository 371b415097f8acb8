export * from './attribute-charts';
export * from './bernoulli-cusum';
export * from './choose';
export * from './control-chart';
export * from './g-chart';
export * from './moving-range';
export * from './phases';
export * from './weighted';
