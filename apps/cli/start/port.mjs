import { createServer } from 'node:net';

/** Asked before anything slow is done: a port that is taken is better told now than after the build. */
export const portIsFree = (port, host) =>
  new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error) => resolve(error.code !== 'EADDRINUSE'));
    probe.listen(port, host, () => probe.close(() => resolve(true)));
  });
