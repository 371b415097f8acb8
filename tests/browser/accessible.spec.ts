import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { describeInBrowser, launch } from '../support/browser';
import { DESK, PHONE, openBrowserPlant, openWindow, signIn } from '../support/browser-plant';
import type { BrowserPlant, Window } from '../support/browser-plant';
import { buildUpTo } from '../support/build-up';

/** WCAG 2.2 at levels A and AA as axe-core 4.10 (Deque, MPL-2.0) checks it by machine: the outside opinion. */
const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

type Violation = {
  readonly id: string;
  readonly nodes: readonly { readonly target: readonly string[]; readonly failureSummary: string }[];
};

const violations = async (page: Page): Promise<readonly string[]> => {
  await page.evaluate(AXE);
  const found: { violations: readonly Violation[] } = await page.evaluate(
    `axe.run(document, { runOnly: { type: 'tag', values: ${JSON.stringify(RULES)} } })`,
  );
  return found.violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} ${target.join(' ')}: ${failureSummary}`),
  );
};

/** Links inside a sentence are exempt, as in WCAG 2.2, 2.5.8: their size is the text's. */
const SMALL_TARGETS = `[...document.querySelectorAll('main button, main summary, main select, main input, main a.button, main a.standing-link, .action-bar button')]
  .map((target) => [target.textContent || target.ariaLabel, target.getBoundingClientRect(), target.className.includes('work-row') ? 64 : 48])
  .filter(([, box, least]) => box.width > 0 && (Math.round(box.height) < least || Math.round(box.width) < 48))
  .map(([words, box]) => words + ': ' + Math.round(box.width) + ' x ' + Math.round(box.height))`;

describeInBrowser('by WCAG 2.2 as axe-core reads it', (found) => {
  let plant: BrowserPlant;
  let browser: Browser;

  beforeAll(async () => {
    plant = await openBrowserPlant(async (opened) => {
      await buildUpTo(opened, { home: 'T-500', station: 'drywall', except: ['wire-protected'] });
      await buildUpTo(opened, { home: 'T-600', station: 'rough-in', except: [] });
    });
    browser = await launch(found);
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  const signedIn = async (size: Window, theme: 'light' | 'dark'): Promise<Page> => {
    const page = await openWindow(browser, size, []);
    // Judged as it comes to rest; whoever asks for less motion gets it at once.
    await page.emulateMedia({ colorScheme: theme, reducedMotion: 'reduce' });
    await signIn(page, plant.address, 'Quality manager');
    return page;
  };

  it('its own judge finds what is wrong: a picture without words', async () => {
    const page = await openWindow(browser, DESK, []);
    await page.setContent('<html lang="en"><title>x</title><main><img src="x.png"></main></html>');
    expect((await violations(page)).join()).toMatch(/^image-alt/);
    await page.context().close();
  });

  describe.each([
    ['a phone, light', PHONE, 'light'],
    ['a desk, dark', DESK, 'dark'],
  ] as const)('on %s', (_name, size, theme) => {
    let page: Page;
    beforeAll(async () => {
      page = await signedIn(size, theme);
    });
    afterAll(() => page.context().close());

    it.each([
      '/',
      '/station/rough-in',
      '/station/drywall/T-500A',
      '/line',
      '/quality',
      '/home',
      '/home/T-500',
      '/holds',
      '/feed',
      '/defects',
      '/release',
      '/release/T-500A',
      '/agency',
      '/agency/report?month=2026-11',
      '/containment',
      '/containment?serial=T-500A&operation=wired&defect=none',
      '/site',
      '/station/drywall/NOBODY',
      '/quality/drywall',
      '/equipment',
      '/rulebook',
      '/traveler/T-500A',
      '/labels/serial/T-500A',
      '/labels/lot/B-10001',
      '/audit',
      '/verify',
      '/nowhere',
    ])('nothing stands in the way of %s', async (path) => {
      await page.goto(`${plant.address}${path}`);
      await page.waitForLoadState('networkidle');
      expect(await violations(page)).toStrictEqual([]);
    });

    it.each(['/station/rough-in', '/station/drywall/T-500A', '/station/rough-in/T-600A'])(
      'every target of %s is at least 48 px high and wide, rows of work at least 64 (project goal for gloves)',
      async (path) => {
        await page.goto(`${plant.address}${path}`);
        await page.locator('main h1').first().waitFor();
        expect(await page.evaluate(SMALL_TARGETS)).toStrictEqual([]);
      },
    );

    it('nothing stands in the way of a refusal, a keypad and an opened row', async () => {
      await page.goto(`${plant.address}/station/drywall/T-500A`);
      await page.getByRole('button', { name: 'May I cover? Drywalled' }).last().click();
      await page.getByText('Do not cover').waitFor();
      expect(await violations(page)).toStrictEqual([]);
      await page.getByRole('button', { name: 'Record now: Plates and sleeves on' }).click();
      await page.getByRole('button', { name: 'Enter', exact: true }).click();
      await page.getByRole('button', { name: '7', exact: true }).click();
      expect(await violations(page)).toStrictEqual([]);
      await page.goto(`${plant.address}/station/rough-in/T-600A`);
      await page.getByRole('button', { name: /^Wired, panel set/ }).click();
      await page.getByText('Who says so').first().click();
      expect(await violations(page)).toStrictEqual([]);
    });
  });
});
