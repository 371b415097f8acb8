export type { Held } from './held';
export * from './outcome';
export * from './verify-packet';
