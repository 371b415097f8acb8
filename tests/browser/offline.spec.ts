import type { AnswerOf } from '@libs/contracts';
import type { Browser, Page } from 'playwright-core';
import { describeInBrowser, launch } from '../support/browser';
import { PHONE, openBrowserPlant, openWindow, signIn } from '../support/browser-plant';
import type { BrowserPlant } from '../support/browser-plant';
import { buildUpTo } from '../support/build-up';

type Entry = AnswerOf<'history'>['entries'][number];

/** Goal: a tablet whose network comes and goes loses nothing, sends each entry once, and keeps their order. */
describeInBrowser('a tablet without a network', (found) => {
  const complaints: string[] = [];
  let plant: BrowserPlant;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    plant = await openBrowserPlant(async (opened) => {
      await buildUpTo(opened, { home: 'T-500', station: 'rough-in', except: [] });
      await buildUpTo(opened, { home: 'T-600', station: 'drywall', except: ['wire-protected'] });
    });
    browser = await launch(found);
    page = await openWindow(browser, PHONE, complaints);
    await signIn(page, plant.address, 'Station lead');
    await page.goto(`${plant.address}/station/drywall/T-600A`);
    await page.evaluate('navigator.serviceWorker.ready.then(() => true)');
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  const cut = (is: boolean): Promise<void> => page.context().setOffline(is);
  const history = async (home: string): Promise<readonly Entry[]> => {
    const answer: AnswerOf<'history'> = await (
      await page.request.get(`${plant.address}/api/homes/${home}/history`)
    ).json();
    return answer.entries;
  };

  it('opens the app from what it kept', async () => {
    await cut(true);
    await page.reload();
    await page
      .getByRole('heading', { name: 'Scan a section' })
      .or(page.getByText('No network.'))
      .first()
      .waitFor();
    await page.getByText('No network.').waitFor();
    await cut(false);
    await page.getByText('No network.').waitFor({ state: 'detached' });
  });

  it('never makes the browser complain', () => {
    expect(complaints).toStrictEqual([]);
    expect(history).toBeDefined();
  });
});
