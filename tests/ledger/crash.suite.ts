import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { join } from 'node:path';
import { askedOf, bin, positionsOf, put } from '../support/bin';
import type { LedgerHouse } from '../support/ledger-house';

const LOADER = join(__dirname, '../support/typescript.cjs');
const CHILD = join(__dirname, 'crash-child.ts');

/** Runs a writer until it has answered so many, then kills it in the middle of whatever it does. */
const killedAfter = async (house: LedgerHouse, answers: number): Promise<readonly string[]> => {
  const child = spawn(process.execPath, ['--require', LOADER, CHILD, JSON.stringify(house.at)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const answered: string[] = [];
  for await (const key of createInterface(child.stdout)) {
    answered.push(key);
    if (answered.length === answers) child.kill('SIGKILL');
  }
  return answered;
};

export const crashSuite = (house: () => LedgerHouse): void => {
  it('has all that was answered, and nothing by halves, after its process was killed', async () => {
    const answered = await killedAfter(house(), 150);
    await house().endLease();

    const ledger = await house().open();
    const again = await Promise.all(answered.map((key) => askedOf(ledger, key, put('a'), put('b'))));

    expect(answered.length).toBeGreaterThanOrEqual(150);
    expect(again.every((outcome) => outcome.ok && outcome.repeated && outcome.events.length === 2)).toBe(
      true,
    );
    const head = await ledger.head();
    const positions = positionsOf(await ledger.after(0, 5_000));
    expect(positions).toStrictEqual(Array.from({ length: head }, (_, n) => n + 1));
    expect([await ledger.state(bin, 'a'), await ledger.state(bin, 'b')]).toStrictEqual([head / 2, head / 2]);
  });
};
