import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Access, GuessCost } from '@libs/plant';
import { openAccess } from '@libs/plant';

const ANYWHERE = { tablet: null, pinCounts: true };

const MINUTE = 60_000;
/** The same function as for real, a hundredth of the work: these tests guess often. */
const CHEAP: GuessCost = { memoryKiB: 64, passes: 1 };

describe('signing in', () => {
  let folder: string;
  let access: Access;
  let now: number;

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'studbook-access-'));
    now = Date.parse('2026-03-02T06:00:00Z');
    access = await openAccess({ sqlite: join(folder, 'access.db') }, () => now, CHEAP);
    await access.addPerson('p-1', '4711');
  });
  afterEach(async () => {
    await access.close();
    rmSync(folder, { recursive: true });
  });

  const guess = async (pin: string, times: number): Promise<readonly string[]> => {
    const outcomes = await Promise.all(
      Array.from({ length: times }, () => access.signIn('p-1', { secret: pin }, ANYWHERE)),
    );
    return outcomes.map((outcome) => (outcome.ok ? 'in' : outcome.why));
  };

  it('opens a session for the right PIN, which ends with the shift', async () => {
    const outcome = await access.signIn('p-1', { secret: '4711' }, ANYWHERE);
    if (!outcome.ok) throw new Error('not signed in');

    expect(await access.whoIs(outcome.session)).toMatchObject({ kind: 'session', actor: 'p-1', role: null });
    now += 12 * 60 * MINUTE;
    expect(await access.whoIs(outcome.session)).toBeUndefined();
  });

  it('ends a session at once when its person signs out', async () => {
    const outcome = await access.signIn('p-1', { secret: '4711' }, ANYWHERE);
    if (!outcome.ok) throw new Error('not signed in');
    await access.whoIs(outcome.session);

    await access.signOut(outcome.session);
    expect(await access.whoIs(outcome.session)).toBeUndefined();
  });

  it('refuses a wrong PIN and a person it does not know with the same words', async () => {
    expect(await access.signIn('p-1', { secret: '0000' }, ANYWHERE)).toStrictEqual({
      ok: false,
      why: 'wrong',
    });
    expect(await access.signIn('p-9', { secret: '4711' }, ANYWHERE)).toStrictEqual({
      ok: false,
      why: 'wrong',
    });
  });

  it('counts guesses sent side by side one by one, and looks at no sixth', async () => {
    expect(await guess('0000', 7)).toStrictEqual([...Array<string>(5).fill('wrong'), 'too-many', 'too-many']);
  });

  it('does not take even the right PIN while a person is locked out, and takes it afterwards', async () => {
    await guess('0000', 5);

    expect(await guess('4711', 1)).toStrictEqual(['too-many']);
    now += MINUTE;
    expect(await guess('4711', 1)).toStrictEqual(['in']);
    expect(await guess('0000', 4)).not.toContain('too-many');
  });

  it('doubles the wait with each further guess, up to a quarter of an hour', async () => {
    await guess('0000', 5);
    const waits: number[] = [];
    for (let round = 0; round < 6; round += 1) {
      const outcome = await access.signIn('p-1', { secret: '0000' }, ANYWHERE);
      if (outcome.ok || outcome.why !== 'too-many') throw new Error('not locked out');
      waits.push(outcome.retryAfterMs / MINUTE);
      now += outcome.retryAfterMs;
      await access.signIn('p-1', { secret: '0000' }, ANYWHERE);
    }
    expect(waits).toStrictEqual([1, 2, 4, 8, 15, 15]);
  });

  it('keeps the wait when the server is started anew', async () => {
    await guess('0000', 5);
    await access.close();

    access = await openAccess({ sqlite: join(folder, 'access.db') }, () => now);
    expect(await guess('4711', 1)).toStrictEqual(['too-many']);
  });

  it('leaves neither PIN nor token nor session in its files', async () => {
    await access.addPerson('p-2', 'a-long-secret-pin');
    const { token } = await access.makeToken({ role: 'machine', name: 'gauge' });
    const outcome = await access.signIn('p-2', { secret: 'a-long-secret-pin' }, ANYWHERE);
    if (!outcome.ok) throw new Error('not signed in');

    const files = readdirSync(folder).map((name) => readFileSync(join(folder, name), 'latin1'));
    for (const secret of ['a-long-secret-pin', token, outcome.session]) {
      expect(files.some((text) => text.includes(secret))).toBe(false);
    }
  });

  /** OWASP Password Storage Cheat Sheet, Argon2id: 19 MiB, 2 passes and 1 lane are among its least. */
  it('makes each guess at a stolen table cost what OWASP asks, and keeps the cost beside the hash', async () => {
    const careful = await openAccess({ sqlite: join(folder, 'careful.db') });
    await careful.addPerson('p-1', '4711');
    expect((await careful.signIn('p-1', { secret: '4711' }, ANYWHERE)).ok).toBe(true);
    await careful.close();

    expect(readFileSync(join(folder, 'careful.db'), 'latin1')).toContain('$argon2id$v=19$m=19456,t=2,p=1$');
  });

  it('shows a PIN only where it was put in to be shown', async () => {
    await access.addPerson('p-3', '1234', { shown: true });
    expect(await access.offers()).toStrictEqual([
      { person: 'p-1', shown: null },
      { person: 'p-3', shown: '1234' },
    ]);
  });
});

describe('a token', () => {
  it('speaks for its own role until it is withdrawn, also when another process withdraws it', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'studbook-access-'));
    const place = { sqlite: join(folder, 'access.db') };
    let now = Date.parse('2026-03-02T06:00:00Z');
    const server = await openAccess(place, () => now);
    const commandLine = await openAccess(place, () => now);

    const { token, actor } = await commandLine.makeToken({ role: 'machine', name: 'tape gauge' });
    expect(await server.whoIs(token)).toMatchObject({
      kind: 'token',
      actor,
      role: 'machine',
      name: 'tape gauge',
    });

    await commandLine.withdraw(actor);
    now += MINUTE;
    expect(await server.whoIs(token)).toBeUndefined();
    expect(await server.whoIs(`${token}x`)).toBeUndefined();

    await Promise.all([server.close(), commandLine.close()]);
    rmSync(folder, { recursive: true });
  });
});
