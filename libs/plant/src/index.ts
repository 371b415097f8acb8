export * from './access';
export * from './names';
export * from './plans';
export * from './plant';
