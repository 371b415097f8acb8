export type { RulebookBody } from './body';
export * from './feel';
export * from './labels';
export * from './open-rulebook';
export * from './read-rulebook';
export * from './resolve-plan';
export * from './rulebook';
