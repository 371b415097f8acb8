import type { Browser, Page } from 'playwright-core';
import { describeInBrowser, launch } from '../support/browser';
import { PHONE, openBrowserPlant, openWindow, scan, signIn } from '../support/browser-plant';
import type { BrowserPlant } from '../support/browser-plant';
import { buildUpTo } from '../support/build-up';

/** Goal: a lead with a phone-sized tablet is kept from covering bare wire, and sees at once how to go on. */
describeInBrowser('five minutes at the drywall station', (found) => {
  const complaints: string[] = [];
  let plant: BrowserPlant;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    plant = await openBrowserPlant(async (opened) => {
      await buildUpTo(opened, { home: 'T-500', station: 'drywall', except: ['wire-protected'] });
    });
    browser = await launch(found);
    page = await openWindow(browser, PHONE, complaints);
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  it('signs a lead in by name and PIN', async () => {
    await signIn(page, plant.address, 'Station lead');
  });

  it('opens a section by its scan, with nothing focused first', async () => {
    await page.goto(`${plant.address}/station/drywall`);
    await page.getByRole('heading', { name: 'Scan a section' }).waitFor();
    await scan(page, 'T-500A');
    await page.getByRole('heading', { name: 'T-500A' }).waitFor();
  });

  it('refuses drywall, and names the plates that are missing', async () => {
    await page.getByRole('button', { name: 'May I cover? Drywalled' }).last().click();
    await page.getByText('Do not cover').waitFor();
    await page.getByText('Plates and sleeves on · Due at Rough-in').waitFor();
    expect(await page.getByText('one thing is missing').count()).toBe(1);
  });

  it('takes the lead straight to recording them', async () => {
    await page.getByRole('button', { name: 'Record now: Plates and sleeves on' }).click();
    await page.getByRole('button', { name: 'Enter', exact: true }).click();
    await page.getByRole('button', { name: '0', exact: true }).click();
    await page.getByRole('button', { name: 'Yes', exact: true }).first().click();
    await page.getByRole('button', { name: 'Sign: Plates and sleeves on' }).click();
    await page.getByText('Plates and sleeves on: recorded as done.').waitFor();
  });

  it('clears drywall once they are on record', async () => {
    await page.getByRole('button', { name: 'Ask again: Drywalled' }).click();
    await page.getByText('Cleared', { exact: true }).waitFor();
  });

  it('shows the yield of every station with its counts', async () => {
    await page.goto(`${plant.address}/quality`);
    await page.getByRole('img', { name: /sections left it right the first time/ }).waitFor();
    await page.getByRole('button', { name: 'Rough-in', exact: true }).first().click();
    await page.getByText(/sections? behind this figure/).waitFor();
  });

  it('never makes the browser complain', () => {
    expect(complaints).toStrictEqual([]);
  });
});
