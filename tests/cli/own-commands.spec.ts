import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { dataFolder } from '@libs/plant';
import { countsByType, eventsIn } from '../support/ledger-file';
import { newFolder, studbook } from '../support/studbook';

jest.setTimeout(180_000);

let folder = '';
const data = (): string => join(folder, 'plant');
const ledger = (): string => dataFolder(data()).ledger;

describe('a file of Studbook’s own commands', () => {
  beforeEach(() => {
    folder = newFolder();
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  const write = (...lines: readonly unknown[]): string => {
    const file = join(folder, 'commands.ndjson');
    writeFileSync(
      file,
      lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line))).join('\n'),
    );
    return file;
  };
  const occurredAt = '2026-03-02T08:00:00.000-06:00';
  const openRules = async (): Promise<void> => {
    const log = join(folder, 'first.csv');
    writeFileSync(log, 'serial,step,end\nP-0,turn,2026-03-02\nP-0,test,2026-03-02\n');
    writeFileSync(join(folder, 'first.yaml'), 'serial: serial\noperation: step\ntime: end\n');
    const run = await studbook('import', log, '--mapping', join(folder, 'first.yaml'), '--data', data());
    expect(run).toMatchObject({ code: 0 });
  };

  it('is told through the same contracts, by line, and says what it could not take', async () => {
    await openRules();
    const file = write(
      {
        command: 'home',
        body: { home: 'O-1', model: 'pump', design: {}, sections: [{ serial: 'P-1' }], occurredAt },
      },
      { command: 'start', actor: 'p-7', body: { serial: 'P-1', at: 'turn', occurredAt } },
      {
        command: 'work',
        key: 'paper-0001',
        body: { serial: 'P-1', operation: 'turn', via: 'paper', occurredAt },
      },
      { command: 'work', body: { serial: 'P-9', operation: 'turn', occurredAt } },
      { command: 'work', body: { serial: 'P-1', operation: 'turn', colour: 'red', occurredAt } },
      { command: 'paint', body: {} },
      '{"command": "work"',
      { command: 'move', body: { serial: 'P-1', to: 'test', occurredAt } },
    );
    const before = countsByType(await eventsIn(ledger()));
    const run = await studbook('import', file, '--data', data(), '--json');

    expect(run.code).toBe(2);
    expect(JSON.parse(run.stdout)).toMatchObject({ rows: 8, taken: 4, refused: 4 });
    const reasons = readFileSync(`${file}.rejected.csv`, 'utf8').split('\r\n').sort();
    expect(reasons).toStrictEqual([
      '',
      expect.stringMatching(/^4,section-unknown \(serial P-9\),/),
      expect.stringMatching(/^5,.*colour/),
      expect.stringMatching(/^6,.*paint.* is no telling/),
      expect.stringMatching(/^7,"?not JSON/),
      'line,reason,row',
    ]);
    const after = countsByType(await eventsIn(ledger()));
    expect([after['WorkRecorded'], after['SectionMoved']]).toStrictEqual([
      (before['WorkRecorded'] ?? 0) + 1,
      (before['SectionMoved'] ?? 0) + 1,
    ]);
    const events = await eventsIn(ledger());
    expect(events.find(({ key }) => key === 'paper-0001')).toMatchObject({ via: 'paper', actor: 'import' });

    const again = await studbook('import', file, '--data', data(), '--json');
    expect(JSON.parse(again.stdout)).toMatchObject({ taken: 4, refused: 4 });
    expect(await eventsIn(ledger())).toStrictEqual(events);
  });
});
