import { createServer } from 'node:net';

/** Asked before the ledger is taken: a server that cannot listen must not push aside the one that does. */
export const assertPortFree = (port: number, host: string): Promise<void> =>
  new Promise((free, taken) => {
    const probe = createServer();
    probe.once('error', taken);
    probe.listen(port, host, () => probe.close(() => free()));
  });
