/** Says how far long work is, on stderr, so that what goes to stdout stays what was asked for. */
export type Progress = {
  readonly at: (done: number, of: number | null, what: string) => void;
  readonly end: () => void;
};

const OFTEN_MS = 200;
/** On a pipe or in a log file every line stays: one now and then is enough. */
const OFTEN_IN_LOGS_MS = 5_000;

export const progressTo = (stream: NodeJS.WriteStream, quiet = false): Progress => {
  const often = stream.isTTY ? OFTEN_MS : OFTEN_IN_LOGS_MS;
  let last = 0;
  let open = false;
  let ended = '';

  return {
    at: (done, of, what) => {
      const now = Date.now();
      if (quiet || (now - last < often && done !== of)) return;
      last = now;
      if (done === of && ended === what) return;
      ended = done === of ? what : '';
      const share = of === null || of === 0 ? '' : ` (${Math.floor((100 * done) / of)} %)`;
      const line = `${what}: ${done}${of === null ? '' : ` of ${of}`}${share}`;
      stream.write(stream.isTTY ? `\r\u001b[K${line}` : `${line}\n`);
      open = stream.isTTY;
    },
    end: () => {
      if (open) stream.write('\n');
      open = false;
    },
  };
};
