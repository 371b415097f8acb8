import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROUTES } from '@libs/contracts';
import { dataFolder, openAccess, openPlantAt } from '@libs/plant';
import type { Plant } from '@libs/plant';
import { eventsIn } from '../support/ledger-file';
import { newFolder, studbook } from '../support/studbook';

const ANYWHERE = { tablet: null, pinCounts: true };

jest.setTimeout(180_000);

let folder = '';
const data = (): string => join(folder, 'plant');
const ledger = (): string => dataFolder(data()).ledger;

const openAt = (): Promise<Plant> =>
  openPlantAt({ at: { file: ledger() }, keys: dataFolder(data()).keys, name: 'test' });

describe('a demonstration plant made from the command line', () => {
  let made: {
    readonly events: number;
    readonly root: string;
    readonly sections: number;
    readonly rejected: object;
  };

  beforeAll(async () => {
    folder = newFolder();
    const run = await studbook(
      'demo',
      '--homes',
      '6',
      '--seed',
      '3',
      '--data',
      data(),
      '--last-day',
      '2026-03-06',
      '--json',
    );
    expect(run).toMatchObject({ code: 0 });
    made = JSON.parse(run.stdout);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('says what it made, and every telling of its story was taken', async () => {
    expect(made).toMatchObject({
      homes: 6,
      rejected: {},
      root: expect.stringMatching(/^[0-9a-f]{64}$/) as unknown,
    });
    expect(await eventsIn(ledger())).toHaveLength(made.events);
  });

  it('leaves nothing half made beside it', () => {
    expect(existsSync(`${data()}.making`)).toBe(false);
  });

  it('is refused for a folder that holds a plant, and leaves that as it is', async () => {
    const run = await studbook('demo', '--homes', '1', '--data', data());
    expect([run.code, run.stdout]).toStrictEqual([1, '']);
    expect(run.stderr).toContain('holds a plant already');
    expect(await eventsIn(ledger())).toHaveLength(made.events);
  });

  it('tells a home’s history in words, in the order it happened', async () => {
    const { code, stdout } = await studbook('history', 'H26-1001-A', '--data', data());
    expect(code).toBe(0);
    expect(stdout).toContain('H26-1001');
    expect(stdout).toMatch(/Serial number stamped|Chassis signed off/);
    const times = [...stdout.matchAll(/^ +\d+ {2}(\d{4}-\d{2}-\d{2} \d{2}:\d{2})/gm)].map(([, time]) => time);
    expect(times.length).toBeGreaterThan(20);
    expect([...times].sort()).toStrictEqual(times);
  });

  it('tells it in Spanish too, and as the contract has it with --json', async () => {
    const spanish = await studbook('history', 'H26-1001-A', '--data', data(), '--language', 'es');
    expect(spanish.stdout).toContain('Chasis');

    const json = await studbook('history', 'H26-1001-A', '--data', data(), '--json');
    expect(ROUTES.history.answer.safeParse(JSON.parse(json.stdout))).toMatchObject({ success: true });
  });

  it('says so where nothing is recorded, or no plant is there', async () => {
    expect(await studbook('history', 'H99-1', '--data', data())).toMatchObject({
      code: 1,
      stderr: 'Nothing is recorded under H99-1.\n',
    });
    expect(await studbook('history', 'H26-1001', '--data', join(folder, 'nowhere'))).toMatchObject({
      code: 1,
      stderr: expect.stringContaining('holds no plant') as unknown,
    });
    expect(existsSync(join(folder, 'nowhere'))).toBe(false);
  });

  it('makes every view anew from the ledger', async () => {
    const run = await studbook('rebuild', '--data', data(), '--json');
    expect([run.code, JSON.parse(run.stdout)]).toStrictEqual([0, { position: made.events }]);
  });

  it('gives a token once, which is known by its hash from then on', async () => {
    const run = await studbook('token', '--role', 'auditor', '--name', 'yearly audit', '--data', data());
    const token = run.stdout.trim();
    const access = await openAccess({ sqlite: dataFolder(data()).access });
    try {
      expect(await access.whoIs(token)).toMatchObject({
        kind: 'token',
        role: 'auditor',
        name: 'yearly audit',
      });
    } finally {
      await access.close();
    }
    expect(readFileSync(dataFolder(data()).access).includes(token)).toBe(false);

    const wrong = await studbook('token', '--role', 'wizard', '--name', 'x', '--data', data());
    expect([wrong.code, wrong.stderr]).toStrictEqual([1, expect.stringContaining('station-lead')]);
  });

  it('enrolls somebody who can then sign in with the PIN that was shown', async () => {
    const run = await studbook(
      'person',
      '--name',
      'Ada',
      '--role',
      'inspector',
      '--crew',
      'quality',
      '--data',
      data(),
      '--json',
    );
    const { person, pin } = JSON.parse(run.stdout);
    const access = await openAccess({ sqlite: dataFolder(data()).access });
    try {
      expect(await access.signIn(person, { secret: pin }, ANYWHERE)).toMatchObject({ ok: true });
    } finally {
      await access.close();
    }
  });
});

describe('a demonstration plant in a folder that somebody has begun to use', () => {
  beforeEach(() => {
    folder = newFolder();
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('takes the place of a ledger with nothing in it, and leaves tokens as they were', async () => {
    await (await openAt()).close();
    const token = (
      await studbook('token', '--role', 'machine', '--name', 'gauge', '--data', data())
    ).stdout.trim();
    const run = await studbook('demo', '--homes', '1', '--data', data(), '--json');
    expect(run).toMatchObject({ code: 0 });

    const access = await openAccess({ sqlite: dataFolder(data()).access });
    try {
      expect(await access.whoIs(token)).toMatchObject({ role: 'machine' });
      expect((await access.offers()).length).toBeGreaterThan(5);
    } finally {
      await access.close();
    }
    expect((await studbook('history', 'H26-1001-A', '--data', data())).code).toBe(0);
  });
});

describe('a command about a plant that is not there', () => {
  beforeEach(() => {
    folder = newFolder();
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it.each([['rebuild'], ['token', '--role', 'auditor', '--name', 'audit']])(
    '%s says so and makes none',
    async (...words) => {
      const run = await studbook(...words, '--data', data());
      expect([run.code, run.stderr]).toStrictEqual([1, expect.stringContaining('holds no plant')]);
      expect(existsSync(data())).toBe(false);
    },
  );

  it('import leaves none behind when its file or its mapping is of no use', async () => {
    const log = join(folder, 'log.csv');
    const mapping = join(folder, 'log.yaml');
    writeFileSync(log, 'serial,step,end\nP-1,turn,2026-03-02\n');
    writeFileSync(mapping, 'serial: serial\noperation: stage\ntime: end\n');
    const runs = [
      await studbook('import', log, '--mapping', mapping, '--data', data()),
      await studbook('import', log, '--mapping', join(folder, 'none.yaml'), '--data', data()),
      await studbook('import', folder, '--data', data()),
    ];
    expect(runs.map(({ code }) => code)).toStrictEqual([1, 1, 1]);
    expect(runs.map(({ stderr }) => stderr)).toStrictEqual([
      expect.stringContaining('there is no column "stage"'),
      expect.stringContaining('there is no such file'),
      expect.stringContaining('is a folder'),
    ]);
    expect(existsSync(data())).toBe(false);
  });
});

describe('the command line beside a running server', () => {
  beforeEach(() => {
    folder = newFolder();
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('reads, and never takes the place of who writes', async () => {
    const server = await openAt();
    try {
      await server.open('Busy plant', 'UTC', false, { key: 'open-1', actor: 'office', assurance: 'token' });
      writeFileSync(join(folder, 'log.csv'), 'serial,step,end\nP-1,turn,2026-03-02\n');
      writeFileSync(join(folder, 'log.yaml'), 'serial: serial\noperation: step\ntime: end\n');
      const words = ['--mapping', join(folder, 'log.yaml'), '--data', data()];

      for (const command of [
        ['import', join(folder, 'log.csv'), ...words],
        ['rebuild', '--data', data()],
      ]) {
        const run = await studbook(...command);
        expect([run.code, run.stderr]).toStrictEqual([1, expect.stringContaining(`process ${process.pid}`)]);
      }
      const read = await studbook('history', 'P-1', '--data', data());
      expect(read).toMatchObject({ code: 1, stderr: 'Nothing is recorded under P-1.\n' });

      await server.enroll(
        { person: 'p-1', name: 'Ada', roles: ['inspector'], crew: null, stations: [] },
        { key: 'enroll-1', actor: 'office', assurance: 'token' },
      );
      expect(await server.head()).toBe(2);
    } finally {
      await server.close();
    }
  });
});
