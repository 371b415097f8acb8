export * from './files';
export * from './making';
export { linesOf, readEvidenceManifest, readPacketManifest } from './reading';
