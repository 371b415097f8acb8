import { createWriteStream, existsSync, rmSync } from 'node:fs';
import { finished } from 'node:stream/promises';
import { stringify } from 'csv-stringify/sync';

export type Refusals = {
  readonly add: (line: number, reason: string, row: string) => void;
  readonly count: () => number;
  /** Written out; the file's name when there were any. */
  readonly close: () => Promise<string | null>;
};

/** Every row that could not be taken, with its line and reason, beside the file it came from. */
export const refusalsOf = (file: string): Refusals => {
  const name = `${file}.rejected.csv`;
  let stream: ReturnType<typeof createWriteStream> | undefined;
  let count = 0;
  if (existsSync(name)) rmSync(name);

  const open = (): NonNullable<typeof stream> => {
    const fresh = createWriteStream(name);
    fresh.write(stringify([['line', 'reason', 'row']], { record_delimiter: 'windows' }));
    return fresh;
  };
  return {
    add: (line, reason, row) => {
      stream ??= open();
      stream.write(stringify([[String(line), reason, row]], { record_delimiter: 'windows' }));
      count += 1;
    },
    count: () => count,
    close: async () => {
      if (stream === undefined) return null;
      stream.end();
      await finished(stream);
      return name;
    },
  };
};
