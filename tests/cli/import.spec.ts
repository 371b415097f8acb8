import { cpSync, existsSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dataFolder, openPlantAt } from '@libs/plant';
import type { Plant } from '@libs/plant';
import { readRulebook } from '@libs/rulebook';
import { parse } from 'csv-parse/sync';
import { OPEN_READONLY } from 'sqlite3';
import { DataSource } from 'typeorm';
import { countsByType, eventsIn } from '../support/ledger-file';
import { newFolder, startStudbook, studbook } from '../support/studbook';

jest.setTimeout(120_000);

const SAMPLES = join(__dirname, 'samples');
let folder = '';

beforeEach(() => {
  folder = newFolder();
  cpSync(SAMPLES, folder, { recursive: true });
});
afterEach(() => {
  rmSync(folder, { recursive: true, force: true });
});

const data = (): string => join(folder, 'plant');
const at = (name: string): string => join(folder, name);
const ledger = (): string => dataFolder(data()).ledger;
const rejected = (name: string): readonly string[][] =>
  parse(readFileSync(`${at(name)}.rejected.csv`, 'utf8'), { relax_column_count: true });

const withPlant = async <T>(ask: (plant: Plant) => Promise<T>): Promise<T> => {
  const files = dataFolder(data());
  const plant = await openPlantAt({ at: { file: files.ledger }, keys: files.keys, name: 'test' });
  try {
    return await ask(plant);
  } finally {
    await plant.close();
  }
};

const importBakery = (...more: readonly string[]): ReturnType<typeof studbook> =>
  studbook('import', at('bakery.csv'), '--mapping', at('bakery.yaml'), '--data', data(), '--json', ...more);

describe("taking in any plant's log as CSV", () => {
  it('takes every row it can, and puts the others aside with line and reason', async () => {
    const run = await importBakery();

    expect(run.code).toBe(2);
    expect(JSON.parse(run.stdout)).toMatchObject({ rows: 12, taken: 9, passedOver: 0, refused: 3 });
    expect(rejected('bakery.csv').map(([line, reason]) => [line, reason])).toStrictEqual([
      ['line', 'reason'],
      ['8', 'column "Fertig": "30.02.2026 05:00:00" is not a time by format "dd.MM.yyyy HH:mm:ss"'],
      ['9', 'column "Charge" is empty'],
      ['10', 'column "Ausschuss": "zwei" is not a whole number from 0 to 10000'],
    ]);
  });

  it('goes by the same decisions as a scan: units started and moved, work done, rejects charged', async () => {
    await importBakery();
    expect(countsByType(await eventsIn(ledger()))).toMatchObject({
      SectionStarted: 3,
      SectionMoved: 6,
      WorkRecorded: 9,
      DefectRecorded: 3,
      SectionShipped: 3,
      LotReceived: 1,
    });
  });

  it('answers yield and history for a plant that builds no homes', async () => {
    await importBakery();
    await withPlant(async (plant) => {
      const { rows } = await plant.asks.yieldByStation({ from: '2026-03-01', to: '2026-03-31' });
      expect(rows.map(({ station, left, clean }) => [station, left, clean])).toStrictEqual([
        ['Knetmaschine', 3, 3],
        ['Tisch', 3, 2],
        ['Ofen 1', 3, 1],
      ]);
      const history = await plant.asks.history('B-101');
      expect(history?.entries.map(({ occurredAt }) => occurredAt).at(-1)).toBe(
        '2026-03-02T05:45:00.000+01:00',
      );
      expect(history?.entries.find(({ type }) => type === 'WorkRecorded')).toMatchObject({
        by: 'Olga',
        station: 'Knetmaschine',
        data: { operation: 'kneten', lots: ['M-7'] },
      });
    });
  });

  it('keeps no name of the log in clear in the ledger or the views', async () => {
    await importBakery();
    const bytes = readFileSync(ledger());
    for (const name of ['Olga', 'Bruno; der Neue']) expect(bytes.includes(name)).toBe(false);
  });

  it('says nothing twice when it is started again', async () => {
    await importBakery();
    const before = await eventsIn(ledger());
    const again = await importBakery();

    expect(again.code).toBe(2);
    expect(JSON.parse(again.stdout)).toMatchObject({ taken: 9, refused: 3 });
    expect(await eventsIn(ledger())).toStrictEqual(before);
  });

  it('takes only what is new from a longer export of the same log', async () => {
    await importBakery();
    const before = await eventsIn(ledger());
    writeFileSync(
      at('bakery.csv'),
      `${readFileSync(at('bakery.csv'), 'utf8')}B 104;kneten;Knetmaschine;Pia;03.03.2026 04:00:00;0;;M-7\r\n`,
    );
    await importBakery();

    const after = await eventsIn(ledger());
    expect(after.slice(0, before.length)).toStrictEqual(before);
    expect(countsByType(after.slice(before.length))).toStrictEqual({
      HomeOrdered: 1,
      HomeStarted: 1,
      PersonEnrolled: 1,
      SectionOrdered: 1,
      SectionStarted: 1,
      WorkRecorded: 1,
    });
  });

  it('writes out the rulebook it made, as files that a person can tighten', async () => {
    await importBakery('--write-rulebook', at('rulebook'));
    const files = Object.fromEntries(
      readdirSync(at('rulebook')).map((name) => [name, readFileSync(join(at('rulebook'), name), 'utf8')]),
    );
    expect(readRulebook(files)).toMatchObject({
      ok: true,
      rulebook: { enforced: false, zone: 'Europe/Berlin' },
    });
  });

  it('refuses rows whose mapping has changed since they were taken, and doubles none', async () => {
    await importBakery();
    const before = await eventsIn(ledger());
    writeFileSync(at('bakery.yaml'), readFileSync(at('bakery.yaml'), 'utf8').replace('Europe/Berlin', 'UTC'));
    const again = await importBakery();

    expect(JSON.parse(again.stdout)).toMatchObject({ taken: 0 });
    expect(rejected('bakery.csv')[1]?.[1]).toContain('read by another mapping');
    expect(await eventsIn(ledger())).toStrictEqual(before);
  });

  it('asks for a mapping, and names what is wrong with one', async () => {
    const without = await studbook('import', at('bakery.csv'), '--data', data());
    expect([without.code, without.stderr]).toStrictEqual([1, expect.stringContaining('--mapping')]);

    writeFileSync(
      at('bakery.yaml'),
      'serial: Charge\noperation: Schritt\ntime: Fertig\nzone: Middle/Earth\nhue: 3\n',
    );
    const wrong = await importBakery();
    expect(wrong.code).toBe(1);
    expect(wrong.stderr).toContain('bakery.yaml: zone: is not a time zone');
    expect(wrong.stderr).toContain('hue');
    expect(existsSync(`${at('bakery.csv')}.rejected.csv`)).toBe(false);

    writeFileSync(at('bakery.yaml'), 'serial: Charge\noperation: Schrit\ntime: Fertig\ndelimiter: ";"\n');
    const absent = await importBakery();
    expect(absent.code).toBe(1);
    expect(absent.stderr).toContain('bakery.csv, line 1: there is no column "Schrit"');
    expect(absent.stderr).toContain('there are: Charge, Schritt, Platz');
  });
});

describe('taking in a log as XES', () => {
  it('reads it by the names of the standard, and passes over what is no completion', async () => {
    const run = await studbook('import', at('pumps.xes'), '--data', data(), '--json');

    expect(run.code).toBe(2);
    expect(JSON.parse(run.stdout)).toMatchObject({ rows: 6, taken: 4, passedOver: 1, refused: 1 });
    expect(rejected('pumps.xes')[1]?.slice(0, 2)).toStrictEqual([
      '47',
      'column "time:timestamp": "yesterday" is not a time by format "iso"',
    ]);
  });
});

describe('an import that is cut short', () => {
  it('goes on where it was when it is started again, and comes to what it would have come to', async () => {
    const rows = Array.from({ length: 3_000 }, (_, row) => [
      `S-${row % 300}`,
      `step ${Math.floor(row / 300)}`,
      new Date(Date.UTC(2026, 0, 5) + row * 60_000).toISOString(),
      row % 7 === 0 ? 1 : 0,
    ]);
    writeFileSync(at('long.csv'), ['serial,step,end,bad', ...rows.map((row) => row.join(','))].join('\n'));
    writeFileSync(at('long.yaml'), 'serial: serial\noperation: step\ntime: end\nrejected: bad\n');
    const words = [
      'import',
      at('long.csv'),
      '--mapping',
      at('long.yaml'),
      '--data',
      data(),
      '--json',
    ] as const;

    const first = startStudbook(...words);
    await recorded(500);
    first.kill('SIGKILL');
    await new Promise((done) => first.once('close', done));
    const second = await studbook(...words);

    expect(second.code).toBe(0);
    expect(countsByType(await eventsIn(ledger()))).toMatchObject({
      HomeOrdered: 300,
      SectionStarted: 300,
      SectionMoved: 2_700,
      WorkRecorded: 3_000,
      DefectRecorded: Math.ceil(3_000 / 7),
    });
  });
});

/** Until the ledger holds so many events. Looks without opening a ledger: the one being made is still without tables. */
const recorded = async (count: number): Promise<void> => {
  while (!existsSync(ledger()) || (await eventsSoFar()) < count) {
    await new Promise((wait) => setTimeout(wait, 50));
  }
};

const eventsSoFar = async (): Promise<number> => {
  const source = await new DataSource({
    type: 'sqlite',
    database: ledger(),
    flags: OPEN_READONLY,
  }).initialize();
  try {
    const tables: unknown[] = await source.query(`SELECT 1 FROM sqlite_master WHERE name = 'event'`);
    if (tables.length === 0) return 0;
    const [row]: { count: number }[] = await source.query('SELECT COUNT(*) AS count FROM event');
    return row?.count ?? 0;
  } finally {
    await source.destroy();
  }
};
