import 'reflect-metadata';
import { join } from 'node:path';
import { inWords } from './composition/in-words';
import { readSettings } from './composition/settings';
import { start } from './composition/start';
import { logTo } from './http/log';

/** This file runs from dist/apps/server/src. */
const WEB = join(__dirname, '../../../web');

const log = logTo(process.stdout);

/** What whoever starts the server can put right is told in words; anything else shows where it came from. */
const stopped = (fault: unknown): void => {
  const words = inWords(fault);
  if (words === undefined) log('stopped', { fault: fault instanceof Error ? fault.stack : String(fault) });
  else process.stderr.write(`${words}\n`);
  process.exitCode = 1;
};

const main = async (): Promise<void> => {
  const settings = readSettings(process.env);
  const server = await start(settings, log, { web: WEB });
  log('ready', { address: server.address, data: settings.data, process: process.pid });
  process.send?.({ ready: server.address, setupCode: server.setupCode });

  let stopping = false;
  const stop = (why: string): void => {
    if (stopping) return;
    stopping = true;
    log('stopping', { why });
    server.close().then(() => {
      log('closed');
      process.exit(0);
    }, stopped);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => stop(signal));
  // Whoever started us is gone without a word.
  process.on('disconnect', () => stop('parent gone'));
};

main().catch(stopped);
