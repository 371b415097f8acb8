import { spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { copyFileSync, existsSync } from 'node:fs';
import { join } from 'node:path';
import { WrittenByAnother } from '@libs/ledger';
import { openLedger } from '@libs/ledger/typeorm';
import type { OpenLedger } from '@libs/ledger/typeorm';
import { sqliteHouse } from '../support/ledger-house';
import type { LedgerHouse } from '../support/ledger-house';

const HOOK = join(__dirname, '../support/typescript.cjs');
const CHILD = join(__dirname, 'crash-child.ts');

/** A writer in a process of its own, once it has recorded something. */
const writerElsewhere = async (house: LedgerHouse): Promise<ChildProcess> => {
  const child = spawn(process.execPath, ['--require', HOOK, CHILD, JSON.stringify(house.at)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  await new Promise((told) => child.stdout.once('data', told));
  return child;
};

const kill = (child: ChildProcess): Promise<void> =>
  new Promise((gone) => {
    child.once('exit', () => gone());
    child.kill('SIGKILL');
  });

describe('a ledger in a SQLite file that another process writes', () => {
  let house: LedgerHouse;
  let child: ChildProcess;
  beforeAll(async () => {
    house = sqliteHouse();
    child = await writerElsewhere(house);
  });
  afterAll(() => house.clear());

  it('is not taken from it while it lives', async () => {
    const taken = house.open();
    await expect(taken).rejects.toThrow(WrittenByAnother);
    await expect(taken).rejects.toThrow(`process ${String(child.pid)}`);
    expect(child.exitCode).toBeNull();
  });

  it('is taken over from a copy of the file, which nobody writes, and after it was killed', async () => {
    const { file } = house.at as { file: string };
    await kill(child);
    for (const end of ['', '-wal', '-shm'])
      if (existsSync(file + end)) copyFileSync(file + end, `${file}.copy${end}`);

    const of: OpenLedger[] = [await house.open()];
    of.push(
      await openLedger({
        at: { file: `${file}.copy` },
        name: 'copy',
        clock: Date.now,
        secret: Buffer.alloc(32, 7),
        keepers: [],
      }),
    );
    expect(await Promise.all(of.map((ledger) => ledger.writes()))).toStrictEqual([true, true]);
    await Promise.all(of.map((ledger) => ledger.close()));
  });
});
