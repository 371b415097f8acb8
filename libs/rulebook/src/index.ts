export * from './rulebook';
