export * from './ed25519';
export * from './signing-keys';
