import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { newFolder, studbook } from '../support/studbook';

jest.setTimeout(180_000);

const RULEBOOK = join(__dirname, '../../seeds/rulebook');

describe('issuing a rulebook from the command line', () => {
  let folder = '';
  const data = (): string => join(folder, 'plant');
  const rulebook = (): string => join(folder, 'rulebook');
  const spoil = (name: string, from: string, to: string): void => {
    const file = join(rulebook(), name);
    const text = readFileSync(file, 'utf8');
    expect(text).toContain(from);
    writeFileSync(file, text.replace(from, to));
  };

  beforeAll(() => {
    folder = newFolder();
    cpSync(RULEBOOK, rulebook(), { recursive: true });
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('numbers the first revision 1, and the next one 2', async () => {
    const first = await studbook('issue', rulebook(), '--data', data(), '--json');
    expect([first.code, JSON.parse(first.stdout)]).toStrictEqual([
      0,
      { revision: 1, operations: 80, stations: 21 },
    ]);
    spoil('plant.yaml', 'en: Chassis', 'en: Chassis hall');
    const second = await studbook('issue', rulebook(), '--data', data(), '--json');
    expect(JSON.parse(second.stdout)).toMatchObject({ revision: 2 });
  });

  it('names every place that needs mending at once, and issues nothing', async () => {
    spoil('values.csv', '>= 0.375', '>= three eighths');
    spoil('covers.csv', 'decked,floor-piped', 'decked,floor-pipd');
    const run = await studbook('issue', rulebook(), '--data', data(), '--json');
    expect(run.code).toBe(1);
    expect(run.stderr).toMatch(/values\.csv, row 2, required: /);
    expect(run.stderr).toMatch(/covers\.csv, row 3, hides: /);

    cpSync(RULEBOOK, rulebook(), { recursive: true });
    const mended = await studbook('issue', rulebook(), '--data', data(), '--json');
    expect(JSON.parse(mended.stdout)).toMatchObject({ revision: 3 });
  });

  it('only looks when asked to check', async () => {
    const check = await studbook('issue', rulebook(), '--check', '--json');
    expect([check.code, JSON.parse(check.stdout)]).toStrictEqual([
      0,
      { ok: true, operations: 80, stations: 21 },
    ]);
  });
});
