export * from './names';
export * from './plans';
export * from './plant';
