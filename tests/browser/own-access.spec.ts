import { generateSync } from 'otplib';
import type { Browser, CDPSession, Page } from 'playwright-core';
import { describeInBrowser, launch } from '../support/browser';
import { DESK, openBrowserPlant, openWindow, ownPin, signIn } from '../support/browser-plant';
import type { BrowserPlant } from '../support/browser-plant';

describeInBrowser('what one signs in with', (found) => {
  const complaints: string[] = [];
  let plant: BrowserPlant;
  let browser: Browser;
  let page: Page;
  let address: string;
  let device: CDPSession;

  beforeAll(async () => {
    plant = await openBrowserPlant();
    browser = await launch(found);
    page = await openWindow(browser, DESK, complaints);
    // Browsers know no passkey for a bare address.
    address = plant.address.replace('127.0.0.1', 'localhost');
    await signIn(page, address, 'Quality manager');
    device = await page.context().newCDPSession(page);
    await device.send('WebAuthn.enable');
    await device.send('WebAuthn.addVirtualAuthenticator', {
      options: {
        protocol: 'ctap2',
        transport: 'internal',
        hasResidentKey: true,
        hasUserVerification: true,
        isUserVerified: true,
        automaticPresenceSimulation: true,
      },
    });
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  const openOwn = async (): Promise<void> => {
    await page.goto(`${address}/own-access`);
    await page.getByLabel('Your PIN or password now').fill(await ownPin(page, address));
  };
  const out = async (): Promise<void> => {
    await page.context().clearCookies();
    await page.goto(`${address}/sign-in`);
    await page.getByRole('button', { name: 'Password, passkey or invitation' }).click();
  };

  it('is a passkey of this device, which then opens the door without a PIN', async () => {
    await openOwn();
    await page.getByLabel('What you call it').fill('laptop');
    await page.getByRole('button', { name: 'Add a passkey' }).click();
    await page.getByText('not used yet').waitFor();

    await out();
    await page.getByRole('button', { name: 'Use a passkey' }).click();
    await page.getByRole('heading', { name: /Good to see you/ }).waitFor();
    await page.goto(`${address}/own-access`);
    await page.getByText(/last used/).waitFor();
  });

  it('is a password of one’s own, refused where everybody tries it first', async () => {
    await openOwn();
    await page.getByLabel('New password').fill('iloveyou');
    await page.getByRole('button', { name: 'Use this password' }).click();
    await page
      .getByText(/everybody tries first/)
      .last()
      .waitFor();
    await page.getByLabel('New password').fill('plates before drywall, always');
    await page.getByRole('button', { name: 'Use this password' }).click();
    await page.getByText('Done. It counts from now on.').waitFor();
  });

  it('is a code of the phone besides, asked for at the next sign-in', async () => {
    await openOwn();
    await page.getByRole('button', { name: 'Begin', exact: true }).click();
    await page.getByRole('img', { name: /Square code/ }).waitFor();
    const secret = await page.locator('code.token').innerText();
    await page.getByLabel('The code it shows now').fill(generateSync({ secret }));
    await page.getByRole('button', { name: 'Use it' }).click();
    await page.locator('.own-recovery li').first().waitFor();
    const spare = await page.locator('.own-recovery li').allInnerTexts();
    expect(spare).toHaveLength(10);

    const me = await (await page.request.get(`${address}/api/me`)).json();
    await out();
    await page.getByLabel('Your name or number').fill(me.actor);
    await page.getByLabel('Password', { exact: true }).fill('plates before drywall, always');
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await page.getByLabel('The code your phone shows').fill(spare[0] ?? '');
    await page.getByRole('button', { name: 'Sign in', exact: true }).click();
    await page.getByRole('heading', { name: /Good to see you/ }).waitFor();
  });

  it('never makes the browser complain', () => {
    expect(complaints).toStrictEqual([]);
  });
});
