import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { dataFolder, openPlantAt } from '@libs/plant';
import type { Plant } from '@libs/plant';
import type { Browser, Page } from 'playwright-core';
import { makeDemonstration } from '../../apps/cli/src/composition/make-demonstration';
import { start } from '../../apps/server/src/composition/start';
import type { Started } from '../../apps/server/src/composition/start';

const PROJECT = join(__dirname, '../..');
const VITE = join(PROJECT, 'node_modules/vite/bin/vite.js');

/** A built web app over a real server on a real SQLite file: the demonstration plant, and what a test adds to it. */
export type BrowserPlant = {
  readonly address: string;
  /** The server goes away, as in a power cut, and comes back at the same address. */
  readonly stop: () => Promise<void>;
  readonly again: () => Promise<void>;
  readonly clear: () => Promise<void>;
};

const build = async (outDir: string): Promise<void> => {
  await promisify(execFile)(
    process.execPath,
    [VITE, 'build', 'apps/web', '--outDir', outDir, '--logLevel', 'error'],
    { cwd: PROJECT, env: { ...process.env, NODE_ENV: 'production' } },
  );
};

/** Enough homes for every station to have seen a few sections; few enough to be made in seconds. */
const HOMES = 8;

export const openBrowserPlant = async (add?: (plant: Plant) => Promise<void>): Promise<BrowserPlant> => {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-browser-'));
  const data = join(folder, 'data');
  const web = join(folder, 'web');
  await Promise.all([
    build(web),
    makeDemonstration({
      folder: data,
      homes: HOMES,
      seed: 'browser',
      lastDay: '2026-11-20',
      progress: () => undefined,
    }),
  ]);
  const files = dataFolder(data);
  const plant = await openPlantAt({ at: { file: files.ledger }, keys: files.keys, name: 'Studbook' });
  await add?.(plant);
  await plant.close();

  const open = (port: number): Promise<Started> =>
    start(
      { port, host: '127.0.0.1', data, databaseUrl: null, demonstration: true, secureCookies: false },
      () => undefined,
      { web },
    );
  let server = await open(0);
  const address = server.address;
  return {
    address,
    stop: () => server.close(),
    again: async () => {
      server = await open(Number(new URL(address).port));
    },
    clear: async () => {
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

export type Window = { readonly width: number; readonly height: number };
export const PHONE: Window = { width: 390, height: 844 };
export const DESK: Window = { width: 1440, height: 900 };

/** A fresh window. What the page itself complains of fails the test that opened it. */
export const openWindow = async (
  browser: Browser,
  { width, height }: Window,
  complaints: string[],
): Promise<Page> => {
  const context = await browser.newContext({
    viewport: { width, height },
    locale: 'en-US',
    hasTouch: width < 1000,
  });
  const page = await context.newPage();
  // Shorter than a test's own limit, so that what was waited for is named.
  page.setDefaultTimeout(10_000);
  page.on('pageerror', (fault) => complaints.push(fault.message));
  page.on('console', (line) => {
    if (
      line.type() === 'error' &&
      !/status of (4\d\d|503)|ERR_CONNECTION|ERR_EMPTY|ERR_INTERNET/.test(line.text())
    )
      complaints.push(line.text());
  });
  return page;
};

/** By name and PIN, as a person does it; the demonstration shows the PIN. */
export const signIn = async (
  page: Page,
  address: string,
  role: 'Station lead' | 'Quality manager' | 'Inspector' | 'Agency inspector',
): Promise<void> => {
  await page.goto(`${address}/sign-in`);
  await page.getByRole('button', { name: role }).first().click();
  const pin = await page
    .getByText(/The PIN is/)
    .locator('strong')
    .innerText();
  for (const digit of pin) await page.getByRole('button', { name: digit, exact: true }).click();
  await page.getByRole('button', { name: 'Sign in', exact: true }).click();
  await page.getByRole('heading', { name: /Good to see you/ }).waitFor();
};

/** What a scanner leaves between two characters. */
const SCANNER_GAP_S = 0.005;

/**
 * As a keyboard-wedge scanner types: no pause to speak of, Enter at the end, wherever the focus is. The times are
 * the scanner's own, as its hardware stamps them: a busy test machine must not turn it into a slow typist.
 */
export const scan = async (page: Page, text: string): Promise<void> => {
  const session = await page.context().newCDPSession(page);
  const keys = [...text.split('').map((character) => ({ key: character, text: character })), ENTER];
  const begun = Date.now() / 1_000 - keys.length * SCANNER_GAP_S;
  for (const [at, key] of keys.entries()) {
    const timestamp = begun + (at + 1) * SCANNER_GAP_S;
    await session.send('Input.dispatchKeyEvent', { type: 'keyDown', timestamp, ...key });
    await session.send('Input.dispatchKeyEvent', { type: 'keyUp', timestamp, key: key.key });
  }
  await session.detach();
};
const ENTER = { key: 'Enter', code: 'Enter', text: '\r', windowsVirtualKeyCode: 13 };

/** The demonstration shows everybody's PIN. */
export const ownPin = async (page: Page, address: string): Promise<string> => {
  const me: { readonly actor: string } = await (await page.request.get(`${address}/api/me`)).json();
  const { people }: { readonly people: readonly { readonly person: string; readonly pin: string }[] } =
    await (await page.request.get(`${address}/api/sign-ins`)).json();
  return people.find(({ person }) => person === me.actor)?.pin ?? '';
};

/** Shows once more who sits there, where something is signed by hand. */
export const signByHand = async (page: Page, address: string): Promise<void> => {
  const dialog = page.getByRole('dialog', { name: 'Sign this' });
  await dialog.getByLabel('Your PIN or password').fill(await ownPin(page, address));
  await dialog.getByRole('button', { name: 'Sign', exact: true }).click();
  await dialog.waitFor({ state: 'detached' });
};
