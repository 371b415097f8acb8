export { plantProof } from './open-proof';
export * from './plant-proof';
export { provingWith } from './proving-with';
