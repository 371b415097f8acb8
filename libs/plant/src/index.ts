export * from './access';
export * from './data-folder';
export * from './names';
export * from './plans';
export * from './plant';
export * from './questions';
