import { cpSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { openPlantAt } from '@libs/plant';
import type { PostgresServer } from '../support/postgres';
import { startPostgres } from '../support/postgres';
import { newFolder, studbookOn } from '../support/studbook';

jest.setTimeout(180_000);

let server: PostgresServer;
let folder = '';
let url = '';

beforeAll(async () => {
  server = await startPostgres();
});
afterAll(() => server.stop());
beforeEach(async () => {
  url = await server.newDatabase();
  folder = newFolder();
  cpSync(join(__dirname, 'samples'), folder, { recursive: true });
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const data = (): string => join(folder, 'plant');
const importPumps = (): ReturnType<typeof studbookOn> =>
  studbookOn(url, 'import', join(folder, 'pumps.xes'), '--data', data(), '--json');

describe('the command line on PostgreSQL', () => {
  it('brings a log in, once, and tells it back', async () => {
    const first = await importPumps();
    expect([first.code, JSON.parse(first.stdout)]).toMatchObject([2, { taken: 4, refused: 1 }]);
    const again = await importPumps();
    expect(JSON.parse(again.stdout)).toMatchObject({ taken: 4, position: JSON.parse(first.stdout).position });

    const history = await studbookOn(url, 'history', 'P-1', '--data', data());
    expect(history).toMatchObject({ code: 0, stdout: expect.stringContaining('assemble & seal') as unknown });
    const rebuilt = await studbookOn(url, 'rebuild', '--data', data(), '--json');
    expect(JSON.parse(rebuilt.stdout)).toStrictEqual({ position: JSON.parse(first.stdout).position });
  });

  it('does not take the ledger from a writer that is alive', async () => {
    const plant = await openPlantAt({ at: { url }, keys: join(data(), 'keys'), name: 'test' });
    try {
      const run = await importPumps();
      expect([run.code, run.stderr]).toStrictEqual([1, expect.stringContaining('is held by writer')]);
      await plant.open('Still here', 'UTC', false, {
        key: 'open-again',
        actor: 'office',
        assurance: 'token',
      });
      expect(await plant.head()).toBe(1);
    } finally {
      await plant.close();
    }
  });

  it('leaves the demonstration to a folder of its own', async () => {
    const run = await studbookOn(url, 'demo', '--data', data());
    expect([run.code, run.stderr]).toStrictEqual([1, expect.stringContaining('Leave DATABASE_URL out')]);
  });
});
