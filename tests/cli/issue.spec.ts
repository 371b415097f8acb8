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

  it('numbers the first revision 1, and hands the next one in for a second person to approve', async () => {
    const first = await studbook('issue', rulebook(), '--data', data(), '--json');
    expect([first.code, JSON.parse(first.stdout)]).toStrictEqual([
      0,
      { revision: 1, operations: 80, stations: 21 },
    ]);
    spoil('plant.yaml', 'en: Chassis', 'en: Chassis hall');
    const second = await studbook('issue', rulebook(), '--data', data(), '--json');
    expect(JSON.parse(second.stdout)).toMatchObject({ proposal: expect.any(String) });
  });

  it('issues it where whoever approved it is named, and the agency’s approval where it is needed', async () => {
    spoil('values.csv', '>= 0.375', '>= 0.5');
    const lacking = await studbook('issue', rulebook(), '--data', data(), '--approved-by', 'p-7');
    expect([lacking.code, lacking.stderr]).toStrictEqual([1, expect.stringContaining('--agency-reference')]);
    const agency = ['--agency-reference', 'letter 26-114', '--agency-date', '2026-03-02'];
    const issued = await studbook(
      'issue',
      rulebook(),
      '--data',
      data(),
      '--approved-by',
      'p-7',
      ...agency,
      '--json',
    );
    expect(JSON.parse(issued.stdout)).toMatchObject({ revision: 2 });
    spoil('values.csv', '>= 0.5', '>= 0.375');
  });

  it('runs a revision over a history, and says that an empty one holds nothing', async () => {
    const run = await studbook('retro-check', '--data', data(), '--json');
    expect([run.code, JSON.parse(run.stdout)]).toStrictEqual([
      0,
      { is: 'done', homes: 0, sections: 0, entries: 0, judged: 0, found: 0, fresh: 0 },
    ]);
    const unknown = await studbook('retro-check', '--data', data(), '--revision', '9');
    expect([unknown.code, unknown.stderr]).toStrictEqual([1, expect.stringContaining('no revision 9')]);
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
    expect(JSON.parse(mended.stdout)).toMatchObject({ proposal: expect.any(String) });
  });

  it('only looks when asked to check', async () => {
    const check = await studbook('issue', rulebook(), '--check', '--json');
    expect([check.code, JSON.parse(check.stdout)]).toStrictEqual([
      0,
      { ok: true, operations: 80, stations: 21 },
    ]);
  });
});
