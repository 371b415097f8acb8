import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { newFolder, studbook } from '../support/studbook';

jest.setTimeout(240_000);

const folder = newFolder();
const data = join(folder, 'plant');
const at = (name: string): string => join(folder, name);
const run = (...words: readonly string[]) => studbook(...words, '--data', data);
const json = (run: { readonly stdout: string }) => JSON.parse(run.stdout);

describe('proof from the command line', () => {
  beforeAll(async () => {
    expect(await run('demo', '--homes', '2', '--seed', '3', '--last-day', '2026-03-06')).toMatchObject({
      code: 0,
    });
  });

  it('exports every home, verifies it with no plant at hand, and makes the same evidence again', async () => {
    const { homes } = json(await run('homes', '--json'));
    const [{ serial }] = homes;
    const held = await run('checkpoint', '--out', at('held.txt'), '--json');
    const first = json(await run('export', serial, '--out', at('a.zip'), '--json'));
    const again = json(
      await run('export', serial, '--out', at('b.zip'), '--at', String(first.position), '--json'),
    );

    const verified = await studbook('verify', at('a.zip'), '--checkpoint', at('held.txt'), '--json');

    expect(homes).toContainEqual(expect.objectContaining({ serial: 'H26-1001', sections: ['H26-1001-A'] }));
    expect(json(held).size).toBe(first.position);
    expect(again.evidence).toBe(first.evidence);
    expect(verified.code).toBe(0);
    expect(json(verified)).toMatchObject({ proven: true });
  });

  it('says what is wrong with a packet in either language, and goes with 1', async () => {
    const bytes = readFileSync(at('a.zip'));
    const event = bytes.indexOf('SectionStarted/1');
    bytes[event + 2]! ^= 1;
    writeFileSync(at('bad.zip'), bytes);

    const [english, spanish] = [
      await studbook('verify', at('bad.zip')),
      await studbook('verify', at('bad.zip'), '--language', 'es'),
    ];

    expect([english.code, spanish.code]).toStrictEqual([1, 1]);
    expect(english.stdout).toMatch(
      /WRONG[^]*Event \d+ of section \S+ \(event \d+ of the ledger\) was changed/,
    );
    expect(spanish.stdout).toMatch(/MAL[^]*El evento \d+ de la sección \S+ .* fue cambiado/);
  });

  it('derives the whole ledger anew', async () => {
    const verified = await run('verify', '--ledger', '--json');

    expect(verified.code).toBe(0);
    expect(json(verified).outcomes.map(({ code }: { code: string }) => code)).toContain('ledger-gapless');
  });

  it('bridges from an older checkpoint, and goes over to a new key', async () => {
    const older = json(await run('checkpoint', '--at', '5', '--out', at('older.txt'), '--json'));
    const changed = json(await run('checkpoint', '--change-key', '--json'));
    const bridge = await run('checkpoint', '--since', at('older.txt'), '--out', at('bridge.jsonl'));

    expect(older.size).toBe(5);
    expect(changed.publicKey).not.toBe(older.publicKey);
    expect(JSON.parse(readFileSync(at('bridge.jsonl'), 'utf8'))).toMatchObject({ from: 5 });
    expect(bridge.code).toBe(0);
    expect(await run('verify', '--ledger')).toMatchObject({ code: 0 });
  });

  it.each([
    [['export', 'nobody', '--out', at('x.zip')], /Nothing is recorded under nobody/],
    [['export', 'nobody', '--out', at('x.zip'), '--at', 'soon'], /position in the ledger/],
    [['checkpoint', '--at', '99999999'], /cannot be signed at 99999999/],
    [['verify', at('nowhere.zip')], /no packet at/],
    [['verify'], /a packet, or --ledger/],
  ])('goes with 1 and a reason on %p', async (words, reason) => {
    const result = await run(...words);

    expect(result.code).toBe(1);
    expect(result.stderr).toMatch(reason);
  });
});
