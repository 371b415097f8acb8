import './node-version.mjs';
import { fork } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBuilt } from './built.mjs';
import { ensureInstalled } from './install.mjs';
import { portIsFree } from './port.mjs';
import { CLI, DATA, ROOT, say, SERVER } from './project.mjs';
import { run } from './run.mjs';

const setting = (name, otherwise) => process.env[name] || otherwise;
const port = setting('PORT', '3000');
const host = setting('HOST', '127.0.0.1');
/** A new plant of one's own, or one kept in PostgreSQL, is not filled with invented homes. */
const wantsDemonstration =
  setting('STUDBOOK_DEMO', '1') !== '0' && !process.env.DATABASE_URL && !existsSync(join(DATA, 'ledger.db'));
const environment = { ...process.env, STUDBOOK_DATA: DATA };

const makeDemonstration = async () => {
  say('Making the demonstration plant: invented homes, people and days of work.');
  const code = await run([process.execPath, CLI, 'demo'], { env: environment });
  if (code !== 0) {
    say(
      'The demonstration plant could not be made; the reason is above. To start without it: STUDBOOK_DEMO=0 npm start',
    );
    process.exit(code);
  }
};

/** One of each role is enough to look around with; the sign-in screen lists everybody. */
const oneOfEach = (people) =>
  people.filter((one, at) => people.findIndex(({ roles }) => `${roles}` === `${one.roles}`) === at);

const greet = async (address, setupCode) => {
  const { people } = await (await fetch(`${address}/api/sign-ins`)).json();
  say(`\nStudbook is ready at ${address.replace('127.0.0.1', 'localhost')}`);
  const shown = people.filter(({ pin }) => pin !== null);
  if (shown.length > 0)
    say(`Invented people of the demonstration plant; ${shown.length} may sign in, among them:`);
  for (const { person, name, roles, pin } of oneOfEach(shown)) {
    say(`  ${name.padEnd(8)} (${person})  PIN ${pin}  ${roles.join(', ')}`);
  }
  if (setupCode !== null)
    say(`There is no administrator yet. Open the address above and give this code: ${setupCode}`);
  say('Stop with Ctrl-C.');
};

/** The server says when it is ready. It stops when we do, also when we are killed and cannot tell it. */
const serve = () => {
  const server = fork(SERVER, { cwd: ROOT, env: environment });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => server.kill(signal));
  server.on('message', ({ ready, setupCode }) => {
    greet(ready, setupCode).catch((error) =>
      say(`The server is up at ${ready}, but did not say who may sign in: ${error.message}`),
    );
  });
  server.on('exit', (code, signal) => process.exit(code ?? (signal === null ? 1 : 0)));
};

if (/^\d+$/.test(port) && Number(port) > 0 && !(await portIsFree(Number(port), host))) {
  say(
    `Port ${port} is in use by another program. Stop that one, or choose another port: PORT=${Number(port) + 1} npm start`,
  );
  process.exit(1);
}
await ensureInstalled({ withTools: false });
await ensureBuilt();
if (wantsDemonstration) await makeDemonstration();
serve();
