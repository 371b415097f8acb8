import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Files for a row's rounds; each round gets a new one, and all go when the row is done. */
export type Scratch = { readonly file: () => string; readonly clear: () => Promise<void> };

export const scratch = (): Scratch => {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-bench-'));
  let made = 0;
  return {
    file: () => join(folder, `${(made += 1)}.sqlite`),
    clear: () => {
      rmSync(folder, { recursive: true });
      return Promise.resolve();
    },
  };
};
