import { fork } from 'node:child_process';
import { join } from 'node:path';
import { Command, Option } from 'commander';
import { EXIT } from '../exit-code';
import { dataOption, folderOf } from '../options';

type ServeOptions = { readonly data: string; readonly port?: string; readonly host?: string };

/** The server's own entry, built beside ours. It reads its settings from the environment. */
const SERVER = join(__dirname, '..', '..', '..', 'server', 'src', 'main.js');

export const serveCommand = (): Command =>
  new Command('serve')
    .description('run the server: the screens and the HTTP API')
    .addOption(dataOption())
    .addOption(new Option('--port <port>', 'port to listen on').env('PORT').default('3000'))
    .addOption(new Option('--host <host>', 'address to listen on').env('HOST').default('127.0.0.1'))
    .addHelpText(
      'after',
      `
Examples:
  studbook serve
  studbook serve --port 3100 --data /srv/plant

Stop with Ctrl-C: what has come in is answered first.`,
    )
    .action(async ({ data, port, host }: ServeOptions) => {
      const environment = { ...process.env, STUDBOOK_DATA: folderOf({ data }), PORT: port, HOST: host };
      process.exitCode = await runServer(environment);
    });

const runServer = (env: NodeJS.ProcessEnv): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = fork(SERVER, { env });
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
      process.on(signal, () => server.kill(signal));
    server.once('error', reject);
    server.once('exit', (code) => resolve(code ?? EXIT.done));
  });
