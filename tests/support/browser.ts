import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { chromium } from 'playwright-core';
import type { Browser } from 'playwright-core';

type Found = { readonly executablePath: string; readonly args: readonly string[] };

/** Where a browser usually lies, when the packaged one does not fit this machine. */
const USUAL_PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];
const QUIET = ['--disable-background-networking', '--disable-component-update', '--disable-sync'];

/** The packaged browser is an ES module, which the test runner cannot load: a plain Node.js asks it where it is. */
const PACKAGED = `import('@sparticuz/chromium').then(async ({ default: chromium }) =>
  process.stdout.write(JSON.stringify({ executablePath: await chromium.executablePath(), args: chromium.args })))`;

const packaged = (): Found | undefined => {
  if (process.platform !== 'linux' || process.arch !== 'x64') return undefined;
  const found: Found = JSON.parse(execFileSync(process.execPath, ['-e', PACKAGED], { encoding: 'utf8' }));
  return existsSync(found.executablePath) ? found : undefined;
};

export const findBrowser = (): Found | undefined => {
  const named = process.env['CHROMIUM_PATH'];
  const place = [...(named === undefined ? [] : [named]), ...USUAL_PLACES].find((path) => existsSync(path));
  if (named === undefined) {
    const found = packaged();
    // In one process a crash of the page would take the browser along.
    if (found !== undefined)
      return { ...found, args: found.args.filter((arg) => arg !== '--single-process') };
  }
  return place === undefined ? undefined : { executablePath: place, args: ['--no-sandbox'] };
};

export const launch = ({ executablePath, args }: Found): Promise<Browser> =>
  chromium.launch({ executablePath, args: [...args, ...QUIET] });

/**
 * A describe that needs a real browser. Without one it is skipped with a loud line, and fails in CI: an early return
 * would count as a pass.
 */
export const describeInBrowser = (title: string, tests: (found: Found) => void): void => {
  const found = findBrowser();
  if (found !== undefined) {
    describe(title, () => tests(found));
    return;
  }
  process.stderr.write(`\nNO BROWSER FOUND: "${title}" is not tested. Set CHROMIUM_PATH to a Chromium.\n\n`);
  const untested = process.env['CI'] === undefined ? describe.skip : describe;
  untested(title, () => it('needs a browser', () => expect(found).toBeDefined()));
};
