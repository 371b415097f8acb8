export * from './plant';
