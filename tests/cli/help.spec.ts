import { studbook } from '../support/studbook';

jest.setTimeout(180_000);

describe('the help', () => {
  it.each(['serve', 'demo', 'import', 'history', 'rebuild', 'person', 'token'])(
    'of %s shows an example',
    async (name) => {
      const { code, stdout } = await studbook(name, '--help');
      expect(code).toBe(0);
      expect(stdout).toMatch(new RegExp(`Examples?:[^]*studbook ${name}`));
    },
  );

  it('has a version', async () => {
    expect((await studbook('--version')).stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  it('says what the exit codes mean', async () => {
    expect((await studbook('--help')).stdout).toContain('Exit codes: 0 done, 1 failed');
  });
});
