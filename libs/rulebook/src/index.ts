export type { RulebookBody } from './body';
export * from './feel';
export * from './judge-destination';
export * from './labels';
export * from './open-rulebook';
export * from './read-rulebook';
export { planDigest } from './plan-text';
export * from './resolve-plan';
export * from './rulebook';
