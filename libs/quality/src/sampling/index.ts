export * from './operating-characteristic';
export * from './plans';
export * from './switching';
