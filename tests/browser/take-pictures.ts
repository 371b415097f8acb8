import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { makeDemonstration } from '../../apps/cli/src/composition/make-demonstration';
import { start } from '../../apps/server/src/composition/start';
import { findBrowser, launch } from '../support/browser';
import { DESK, PHONE, openWindow, scan, signIn } from '../support/browser-plant';

/** Takes the README's pictures from a demonstration plant made for them: `npm run pictures`, after `npm run build`. */
const PROJECT = join(__dirname, '../..');
const PICTURES = join(PROJECT, 'apps/web/pictures');
/** Enough for charts that say something, and made in a few seconds. */
const HOMES = 60;
/** Charts and verdicts move into place. A picture may wait; no test does. */
const SETTLED_MS = 1_500;

type Heldup = { readonly serial: string; readonly home: string };

/** The demonstration leaves sections before the boards with their plates unrecorded. */
const heldUpAtDrywall = async (page: Page): Promise<Heldup> => {
  const answer = await page.request.get(new URL('/api/line', page.url()).href);
  const { sections }: { sections: readonly (Heldup & { station: string; holds: number })[] } =
    await answer.json();
  const found = sections.find(({ station, holds }) => station === 'drywall' && holds > 0);
  if (found === undefined) throw new Error('The demonstration plant left no section held at Drywall.');
  return found;
};

const takeAll = async (phone: Page, desk: Page, address: string): Promise<void> => {
  const take = async (page: Page, name: string): Promise<void> => {
    await page.waitForTimeout(SETTLED_MS);
    await page.screenshot({ path: join(PICTURES, `${name}.png`) });
  };

  await signIn(phone, address, 'Station lead');
  const { serial, home } = await heldUpAtDrywall(phone);
  await phone.goto(`${address}/station/drywall`);
  await phone.getByRole('heading', { name: 'Scan a section' }).waitFor();
  await scan(phone, serial);
  await phone.getByRole('heading', { name: serial }).waitFor();
  await take(phone, 'station');
  await phone.getByRole('button', { name: 'May I cover? Drywalled' }).last().click();
  await phone.getByText('Do not cover').waitFor();
  await take(phone, 'refused');
  await phone.getByRole('button', { name: 'Record now: Plates and sleeves on' }).click();
  await phone.getByRole('button', { name: 'Enter', exact: true }).click();
  await phone.getByRole('button', { name: '0', exact: true }).click();
  await take(phone, 'keypad');
  await phone.getByRole('button', { name: 'Yes', exact: true }).first().click();
  await phone.getByRole('button', { name: 'Sign: Plates and sleeves on' }).click();
  await phone.getByText('Plates and sleeves on: recorded as done.').waitFor();
  await phone.getByRole('button', { name: 'Ask again: Drywalled' }).click();
  await phone.getByText('Cleared', { exact: true }).waitFor();
  await take(phone, 'cleared');

  await signIn(desk, address, 'Quality manager');
  for (const [path, name] of [
    ['/line', 'line'],
    ['/quality', 'quality'],
    [`/home/${home}`, 'home'],
  ] as const) {
    await desk.goto(`${address}${path}`);
    await take(desk, name);
  }
};

const main = async (): Promise<void> => {
  const found = findBrowser();
  if (found === undefined) throw new Error('No browser was found. Set CHROMIUM_PATH to a Chromium.');

  const data = mkdtempSync(join(tmpdir(), 'studbook-pictures-'));
  await makeDemonstration({
    folder: data,
    homes: HOMES,
    seed: 'studbook',
    lastDay: '2026-11-20',
    progress: () => undefined,
  });
  const server = await start(
    { port: 0, host: '127.0.0.1', data, databaseUrl: null, demonstration: true, secureCookies: false },
    () => undefined,
    { web: join(PROJECT, 'dist/web') },
  );
  const browser = await launch(found);
  mkdirSync(PICTURES, { recursive: true });
  const complaints: string[] = [];
  const phone = await openWindow(browser, PHONE, complaints);
  await takeAll(phone, await openWindow(browser, DESK, complaints), server.address);
  if (complaints.length > 0) throw new Error(`The page complained: ${complaints.join('; ')}`);
  await browser.close();
  await server.close();
  rmSync(data, { recursive: true, force: true });
  process.stdout.write(`Pictures are in ${PICTURES}\n`);
};

main().catch((error: unknown) => {
  process.stderr.write(`${String(error)}\n`);
  process.exitCode = 1;
});
