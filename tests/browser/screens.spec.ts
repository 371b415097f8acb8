import { randomUUID } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { ROUTES } from '@libs/contracts';
import type { Browser, Page } from 'playwright-core';
import { describeInBrowser, launch } from '../support/browser';
import { DESK, openBrowserPlant, openWindow, scan, signIn } from '../support/browser-plant';
import type { BrowserPlant } from '../support/browser-plant';
import { buildUpTo } from '../support/build-up';

/** The narrowest phone in use. */
const NARROW = { width: 360, height: 740 };

describeInBrowser('the screens', (found) => {
  const complaints: string[] = [];
  let plant: BrowserPlant;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    plant = await openBrowserPlant(async (opened) => {
      await buildUpTo(opened, { home: 'T-500', station: 'drywall', except: ['wire-protected'] });
    });
    browser = await launch(found);
    page = await openWindow(browser, DESK, complaints);
    await signIn(page, plant.address, 'Quality manager');
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  const tell = async (route: 'pull' | 'return', body: object): Promise<void> => {
    const answered = await page.request.post(`${plant.address}${ROUTES[route].path}`, {
      data: body,
      headers: { 'idempotency-key': randomUUID() },
    });
    expect(answered.status()).toBe(201);
  };
  const bay = (name: string) =>
    page.getByRole('listitem').filter({ has: page.getByRole('heading', { name, exact: true }) });

  it('draw the line, and move a section on it as soon as someone tells of it', async () => {
    await page.goto(`${plant.address}/line`);
    await page.getByText('Live', { exact: true }).waitFor();
    await bay('Drywall').getByRole('link', { name: 'T-500A' }).waitFor();

    await tell('pull', { serial: 'T-500A', reason: 'heavy-rework' });
    await page.getByRole('region', { name: 'Off the line' }).getByRole('link', { name: 'T-500A' }).waitFor();
    expect(await bay('Drywall').getByRole('link', { name: 'T-500A' }).count()).toBe(0);
  });

  it('say when they are no longer live, and catch up when the server is back', async () => {
    await plant.stop();
    await page.getByText('Not live: no connection. What you see may be old.').waitFor();
    await plant.again();
    await tell('return', { serial: 'T-500A', to: 'drywall' });
    await page.getByText('Live', { exact: true }).waitFor();
    await bay('Drywall').getByRole('link', { name: 'T-500A' }).waitFor();
  });

  it('show the same line as a table', async () => {
    await page.getByRole('button', { name: 'Table' }).click();
    const row = page.getByRole('row').filter({ hasText: 'T-500A' });
    expect(await row.getByRole('cell').first().innerText()).toBe('Drywall');
  });

  it("tell a home's story in the order it happened, refusals and holds apart when asked", async () => {
    await page.goto(`${plant.address}/home/T-500`);
    await page.getByRole('heading', { name: /How home T-500 was built/ }).waitFor();
    const all = await page
      .getByRole('listitem')
      .filter({ has: page.locator('time') })
      .count();
    await page.getByRole('button', { name: /^Moves/ }).click();
    const moves = await page
      .getByRole('listitem')
      .filter({ has: page.locator('time') })
      .count();
    expect(moves).toBeGreaterThan(3);
    expect(moves).toBeLessThan(all);
  });

  it('open the scanned home from the history screen', async () => {
    await page.goto(`${plant.address}/home`);
    await page.getByRole('heading', { name: 'Find a home' }).waitFor();
    await scan(page, 'T-500A');
    await page.getByRole('heading', { name: /How home T-500 was built/ }).waitFor();
  });

  it('list the sections behind a bar of the defects', async () => {
    await page.goto(`${plant.address}/quality`);
    await page.getByRole('button', { name: 'Station charged' }).click();
    await page.getByRole('img', { name: /leads: \d+ of \d+ defects/ }).waitFor();
    const table = page
      .getByRole('table')
      .filter({ has: page.getByRole('columnheader', { name: 'Running share' }) });
    await table.getByRole('button').first().click();
    await page.getByRole('heading', { name: /defects?: / }).waitFor();
    // The heading stands before its list has come.
    await page.getByRole('link', { name: /^H\d/ }).first().waitFor();
  });

  it('hand out a chart as CSV with its counts, and as a picture', async () => {
    const chart = page.getByRole('figure').first();
    const saved = async (name: string): Promise<Buffer> => {
      const [download] = await Promise.all([
        page.waitForEvent('download'),
        chart.getByRole('button', { name }).click(),
      ]);
      return readFileSync(await download.path());
    };
    expect((await saved('CSV')).toString()).toMatch(
      /^Station,Right first time,.*\r\n(?:.*\r\n)*Rough-in,\d+% · \d+ of \d+,/,
    );
    // Every PNG begins with these eight bytes (PNG specification, 5.2).
    expect([...(await saved('Picture')).subarray(0, 8)]).toStrictEqual([137, 80, 78, 71, 13, 10, 26, 10]);
  });

  it('speak Spanish when asked, say so to a screen reader, and remember it', async () => {
    await page.goto(`${plant.address}/station/drywall/T-500A`);
    await page.getByRole('button', { name: 'Español' }).click();
    await page.getByRole('button', { name: '¿Puedo cubrir? Tablaroca puesta' }).last().click();
    await page.getByText('No cubra').waitFor();
    expect(await page.locator('html').getAttribute('lang')).toBe('es-US');
    await page.reload();
    await page.getByText('Toca aquí').waitFor();
    await page.getByRole('button', { name: 'English' }).click();
    await page.getByText('Due here').waitFor();
  });

  it('turn dark when asked, and remember it', async () => {
    const paper = () => page.evaluate('getComputedStyle(document.documentElement).backgroundColor');
    const light = await paper();
    await page.getByRole('button', { name: 'Display' }).click();
    await page.getByRole('button', { name: 'Dark' }).click();
    expect(await paper()).not.toBe(light);
    await page.reload();
    await page.getByText('Due here').waitFor();
    expect(await paper()).not.toBe(light);
  });

  it('show where the keyboard is, and let it skip to the content', async () => {
    await page.goto(`${plant.address}/line`);
    await page.getByText('Live', { exact: true }).waitFor();
    await page.keyboard.press('Tab');
    expect(await page.evaluate('getComputedStyle(document.activeElement).outlineStyle')).toBe('solid');
    expect(await page.evaluate('document.activeElement.textContent')).toBe('Skip to the content');
  });

  it.each([
    '/',
    '/station/rough-in',
    '/station/drywall/T-500A',
    '/line',
    '/quality',
    '/home',
    '/home/T-500',
    '/no/such/place',
  ])('need no sideways scrolling on the narrowest phone: %s', async (path) => {
    await page.setViewportSize(NARROW);
    await page.goto(`${plant.address}${path}`);
    await page.locator('main h1, main [aria-busy=true]').first().waitFor();
    await page.waitForLoadState('networkidle');
    expect(
      await page.evaluate('document.documentElement.scrollWidth - document.documentElement.clientWidth'),
    ).toBe(0);
    await page.setViewportSize(DESK);
  });

  it('never make the browser complain', () => {
    expect(complaints).toStrictEqual([]);
  });
});
