import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import type { Browser, Page } from 'playwright-core';
import { buildUpTo } from '../support/build-up';
import { describeInBrowser, launch } from '../support/browser';
import { DESK, openBrowserPlant, openWindow, signIn } from '../support/browser-plant';
import type { BrowserPlant } from '../support/browser-plant';

const MARKUP = '"><img src=x onerror="window.struck = true"><script>window.struck = true</script>{{7*7}}';
const NAME = `<b onmouseover="window.struck = true">Eve</b>`;
const SECTION = 'T-900A';

/** Into every field of free text that a telling has, by somebody with a name that is markup. */
const fill = async (plant: Plant): Promise<void> => {
  await buildUpTo(plant, { home: 'T-900', station: 'drywall', except: [] });
  const sender = (key: string) => ({ key, actor: 'p-eve', assurance: 'session' as const });
  await plant.enroll(
    { person: 'p-eve', name: NAME, roles: ['quality-manager'], crew: null, stations: [] },
    sender('enroll-eve'),
  );
  const defect = { class: 'nonconformance', component: 'outlet', symptom: 'dead' };
  const told = [
    await plant.tell.hold(
      ROUTES.hold.body.parse({ serial: SECTION, reason: 'look-again', note: MARKUP }),
      sender('hold-eve'),
      {},
    ),
    await plant.tell.defect(
      ROUTES.defect.body.parse({ serial: SECTION, ...defect, note: MARKUP }),
      sender('defect-eve'),
      {},
    ),
  ];
  expect(told.map(({ ok }) => ok)).toStrictEqual([true, true]);
};

describeInBrowser('text that somebody wrote to do harm', (found) => {
  let plant: BrowserPlant;
  let browser: Browser;
  let page: Page;
  const complaints: string[] = [];
  beforeAll(async () => {
    plant = await openBrowserPlant(fill);
    browser = await launch(found);
    page = await openWindow(browser, DESK, complaints);
    await signIn(page, plant.address, 'Quality manager');
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  it.each([
    [`/home/${SECTION}`, MARKUP],
    ['/holds', SECTION],
    ['/defects', SECTION],
    ['/line', SECTION],
    [`/station/drywall/${SECTION}`, SECTION],
    [`/release/${SECTION}`, SECTION],
    [`/tag/${SECTION}/hold-eve-0`, SECTION],
  ])('shows hostile text as text, and runs none of it: %s', async (path, seen) => {
    await page.goto(`${plant.address}${path}`);
    await page.getByText(seen).first().waitFor();
    expect(await page.evaluate('window.struck')).toBeUndefined();
    expect(await page.locator('img[src="x"], b[onmouseover]').count()).toBe(0);
  });

  it('is read with its writer’s name, letter by letter', async () => {
    await page.goto(`${plant.address}/home/${SECTION}`);
    await page.getByText(NAME).first().waitFor();
    expect(complaints).toStrictEqual([]);
  });
});
