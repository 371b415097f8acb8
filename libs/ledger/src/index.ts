export * from './port';
