export { plantProof } from './open-proof';
export * from './plant-proof';
export { provingWith, signingFolder } from './proving-with';
