import { renameSync, writeFileSync } from 'node:fs';
import { Usable } from './exit-code';

/** Whole or not at all: a file of that name never holds half of what was asked for. */
export const writeOut = (path: string, content: Uint8Array | string): void => {
  const making = `${path}.${process.pid}.part`;
  try {
    writeFileSync(making, content);
    renameSync(making, path);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Usable(`${path} cannot be written: ${why}`);
  }
};
