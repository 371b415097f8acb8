import { mkdtempSync, readFileSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openAccess, codeStep, passwordFault, vaultUnder } from '@libs/plant';
import type { Access } from '@libs/plant';
import { generateSync } from 'otplib';

const AT_A_DESK = { tablet: null, pinCounts: true };
const ON_A_TABLET = { tablet: 'tablet-1', pinCounts: true };
const OUTSIDE = { tablet: null, pinCounts: false };
const CHEAP = { memoryKiB: 64, passes: 1 };
const MINUTE = 60_000;
const PASSWORD = 'plates before drywall, always';

describe('what people sign in with', () => {
  let folder: string;
  let access: Access;
  let now: number;

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'studbook-factors-'));
    now = Date.parse('2026-03-02T06:00:00Z');
    access = await openAccess(
      { sqlite: join(folder, 'access.db') },
      () => now,
      CHEAP,
      vaultUnder(Buffer.alloc(32, 7)),
    );
    await access.addPerson('p-1', '471100');
  });
  afterEach(async () => {
    await access.close();
    rmSync(folder, { recursive: true });
  });

  const codeOf = (secret: string): string => generateSync({ secret, epoch: Math.floor(now / 1_000) });
  const withCodes = async (): Promise<{ readonly secret: string; readonly recovery: readonly string[] }> => {
    const { secret } = await access.beginCodes('p-1', 'Ada');
    const recovery = (await access.confirmCodes('p-1', codeOf(secret))) ?? [];
    now += MINUTE;
    return { secret, recovery };
  };
  const signIn = async (
    secret: string,
    {
      code,
      step = AT_A_DESK,
    }: { readonly code?: string; readonly step?: typeof OUTSIDE | typeof ON_A_TABLET } = {},
  ): Promise<string> => {
    const outcome = await access.signIn('p-1', { secret, code }, step);
    return outcome.ok ? 'in' : outcome.why;
  };

  it('is a password of their own, beside the PIN, which counts only on a tablet of the plant', async () => {
    await access.setPassword('p-1', PASSWORD);
    expect(await signIn(PASSWORD, { step: OUTSIDE })).toBe('in');
    expect(await signIn('471100', { step: OUTSIDE })).toBe('tablet-needed');
    expect(await signIn('471100', { step: ON_A_TABLET })).toBe('in');
  });

  it('is taken exactly as it was typed: no case, no blank, no tail is forgiven', async () => {
    await access.setPassword('p-1', PASSWORD);
    for (const other of [PASSWORD.toUpperCase(), `${PASSWORD} `, PASSWORD.slice(0, -1)])
      expect(await signIn(other, { step: OUTSIDE })).toBe('wrong');
  });

  it('ends every other session when the password becomes another', async () => {
    const [one, other] = [await access.letIn('p-1', 'password'), await access.letIn('p-1', 'password')];
    await access.setPassword('p-1', PASSWORD, one.session);
    expect(await access.whoIs(one.session)).toBeDefined();
    expect(await access.whoIs(other.session)).toBeUndefined();
  });

  it('asks for a code of the phone once there is one, but not where the tablet is the second thing', async () => {
    const { secret } = await withCodes();
    expect(await signIn('471100')).toBe('code-needed');
    expect(await signIn('471100', { code: '000000' })).toBe('code-wrong');
    expect(await signIn('471100', { code: codeOf(secret) })).toBe('in');
    expect(await signIn('471100', { step: ON_A_TABLET })).toBe('in');
  });

  it('takes a code once, and none of an earlier step (RFC 6238, 5.2)', async () => {
    const { secret } = await withCodes();
    const earlier = codeOf(secret);
    now += MINUTE / 2;
    const code = codeOf(secret);
    expect(await signIn('471100', { code })).toBe('in');
    expect(await signIn('471100', { code })).toBe('code-wrong');
    expect(await signIn('471100', { code: earlier })).toBe('code-wrong');
  });

  it('gives ten recovery codes, each of which works once, however it is typed', async () => {
    const { recovery } = await withCodes();
    expect(new Set(recovery).size).toBe(10);
    const typed = (recovery[3] ?? '').toLowerCase().replaceAll('-', ' ');
    expect(await signIn('471100', { code: typed })).toBe('in');
    expect(await signIn('471100', { code: typed })).toBe('code-wrong');
    expect((await access.factorsOf('p-1')).filter(({ kind }) => kind === 'recovery')).toHaveLength(9);
  });

  it('locks whoever guesses codes, as it does whoever guesses PINs', async () => {
    await withCodes();
    const outcomes: string[] = [];
    for (let n = 0; n < 7; n += 1) outcomes.push(await signIn('471100', { code: `00000${String(n)}` }));
    expect(outcomes).toContain('too-many');
  });

  it('keeps no code, secret or password where it could be read', async () => {
    const { secret, recovery } = await withCodes();
    await access.setPassword('p-1', PASSWORD);
    const files = readdirSync(folder).map((name) => readFileSync(join(folder, name), 'latin1'));
    for (const hidden of [secret, PASSWORD, ...recovery, ...recovery.map((one) => one.replaceAll('-', ''))])
      expect(files.some((text) => text.includes(hidden))).toBe(false);
  });

  it('lets an invitation be taken once, within three days', async () => {
    const { code } = await access.invite('p-1', 'administrator');
    expect(await access.takeInvitation(code)).toBe('p-1');
    expect(await access.takeInvitation(code)).toBeUndefined();
    const late = await access.invite('p-1', 'administrator');
    now += 73 * 60 * MINUTE;
    expect(await access.takeInvitation(late.code)).toBeUndefined();
  });

  it('binds a tablet by a code that works once, and ends its sessions with it', async () => {
    const { tablet, code } = await access.offerTablet(
      { name: 'rough-in', stations: ['rough-in'] },
      'administrator',
    );
    const bound = await access.bindTablet(code);
    expect(await access.bindTablet(code)).toBeUndefined();
    expect(await access.tabletOf(bound?.secret ?? '')).toMatchObject({ tablet, stations: ['rough-in'] });

    const here = await access.letIn('p-1', 'pin', { tablet });
    const elsewhere = await access.letIn('p-1', 'pin');
    let told = 0;
    access.onEnded(() => (told += 1));
    await access.endTablet(tablet, 'administrator');
    expect(told).toBe(1);
    expect(await access.whoIs(here.session)).toBeUndefined();
    expect(await access.whoIs(elsewhere.session)).toBeDefined();
    expect(await access.tabletOf(bound?.secret ?? '')).toBeUndefined();
  });

  it('binds no tablet after a quarter of an hour', async () => {
    const { code } = await access.offerTablet({ name: 'late', stations: [] }, 'administrator');
    now += 16 * MINUTE;
    expect(await access.bindTablet(code)).toBeUndefined();
  });
});

describe('a password', () => {
  /** ASVS 5.0: 6.2.1 and 6.2.9 lengths, 6.2.5 any composition, 6.2.4 and 6.2.12 none that breaches made known. */
  it.each([
    ['1234567', 'too-short'],
    ['password1', 'too-common'],
    ['PASSWORD1', 'too-common'],
    ['iloveyou', 'too-common'],
    ['Quillmere', 'names-the-person'],
    ['x'.repeat(129), 'too-long'],
    ['allsmallletters', undefined],
    ['clavos y tornillos', undefined],
    ['六枚の釘を打つ場所', undefined],
    ['x7'.repeat(32), undefined],
  ])('%s: %s', (password, fault) => {
    expect(passwordFault(password, ['Quillmere'])).toBe(fault);
  });
});

/** RFC 6238, appendix B, the rows of SHA-1 (eight digits there, of which the last six are what six digits give). */
describe('a code of RFC 6238', () => {
  const SECRET = 'GEZDGNBVGY3TQOJQGEZDGNBVGY3TQOJQ';
  it.each([
    [59, '94287082', 1],
    [1_111_111_109, '07081804', 37_037_036],
    [1_111_111_111, '14050471', 37_037_037],
    [1_234_567_890, '89005924', 41_152_263],
    [2_000_000_000, '69279037', 66_666_666],
    [20_000_000_000, '65353130', 666_666_666],
  ])('at %i seconds is %s, of step %i', async (seconds, code, step) => {
    expect(await codeStep(SECRET, code.slice(2), { now: seconds * 1_000, usedStep: 0 })).toBe(step);
  });

  it('is no code where it is anything but six digits', async () => {
    for (const code of ['94287082', '28708', '28708a', '', '２８７０８２'])
      expect(await codeStep(SECRET, code, { now: 59_000, usedStep: 0 })).toBeUndefined();
  });
});
