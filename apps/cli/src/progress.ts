/** Says how far long work is, on stderr, so that what goes to stdout stays what was asked for. */
export type Progress = {
  readonly at: (done: number, of: number | null, what: string) => void;
  readonly end: () => void;
};

const OFTEN_MS = 200;
/** On a pipe or in a log file every line stays: one now and then is enough. */
const OFTEN_IN_LOGS_MS = 5_000;

export const progressTo = (stream: NodeJS.WriteStream): Progress => {
  const often = stream.isTTY ? OFTEN_MS : OFTEN_IN_LOGS_MS;
  let last = 0;
  let shown = '';

  const isWanted = (line: string, isDone: boolean): boolean =>
    line !== shown && (isDone || Date.now() - last >= often);
  return {
    at: (done, of, what) => {
      const line = lineOf(done, of, what);
      if (!isWanted(line, done === of)) return;

      last = Date.now();
      shown = line;
      stream.write(stream.isTTY ? `\r\u001b[K${line}` : `${line}\n`);
    },
    end: () => {
      if (stream.isTTY && shown !== '') stream.write('\n');
      shown = '';
    },
  };
};

const lineOf = (done: number, of: number | null, what: string): string => {
  if (of === null || of === 0) return `${what}: ${done}`;
  return `${what}: ${done} of ${of} (${Math.floor((100 * done) / of)} %)`;
};
