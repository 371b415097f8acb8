import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { accessOver, openAccessRows } from '@libs/plant';

const DAY_MS = 86_400_000;

describe('a link', () => {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-links-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  it('opens its home until its day, is kept as a hash alone, and then opens nothing', async () => {
    const file = join(folder, 'access.db');
    const clock = { now: Date.UTC(2026, 4, 1) };
    const access = accessOver(await openAccessRows({ sqlite: file }), () => clock.now);
    const { token } = await access.issueLink(
      { home: 'H-1', purpose: 'owner', name: 'the owner', days: 2 },
      'p-1',
    );

    clock.now += 2 * DAY_MS - 1;
    expect(await access.openLink(token, ['owner'])).toMatchObject({ home: 'H-1', purpose: 'owner' });
    expect(await access.openLink(token, ['installer'])).toBeUndefined();
    clock.now += 1;
    expect(await access.openLink(token, ['owner'])).toBeUndefined();
    expect(await access.linksOf('H-1')).toStrictEqual([]);
    await access.close();
    expect(readFileSync(file).includes(token)).toBe(false);
  });
});
