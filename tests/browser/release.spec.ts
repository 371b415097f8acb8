import type { Browser, Page } from 'playwright-core';
import { describeInBrowser, launch } from '../support/browser';
import { DESK, PHONE, openBrowserPlant, openWindow, signIn } from '../support/browser-plant';
import type { BrowserPlant } from '../support/browser-plant';
import { ROUTES } from '@libs/contracts';
import type { PlantTelling, SentBodyOf } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { LABEL_RULEBOOK } from '../support/label-rulebook';

/** One whose label is due, and six that came down the line after it with the same crew. */
const FAILING = 'C-700';
const OTHERS = ['C-701', 'C-702', 'C-703', 'C-704', 'C-705', 'C-706'];
const MORE = ['window', 'siding', 'paint', 'cabinet', 'counter', 'molding', 'duct', 'drain', 'deck', 'alarm'];

/** The smallest line that ends in a label, with enough components for a search. */
const FILES = {
  ...LABEL_RULEBOOK,
  'components.csv': `${LABEL_RULEBOOK['components.csv'] ?? ''}${[...MORE, 'outlet', 'panel', 'switch']
    .map((id) => `${id},${id},${id}\n`)
    .join('')}`,
};

/** All seven built as planned, boards up, tested, and standing at final. */
const buildSeven = async (plant: Plant): Promise<void> => {
  let sent = 0;
  const sender = (actor: string) =>
    ({ key: `seven-${String((sent += 1))}`, actor, assurance: 'pin' }) as const;
  const issued = await plant.issueRevision(FILES, new Date().toISOString(), sender('p-150'));
  if (!issued.ok) throw new Error(JSON.stringify(issued.problems));
  const tell = async <N extends PlantTelling>(name: N, body: SentBodyOf<N>, actor: string): Promise<void> => {
    const send = plant.tell[name] as (
      body: unknown,
      by: ReturnType<typeof sender>,
      params: object,
    ) => Promise<{ ok: true } | { ok: false; rejection: object }>;
    const told = await send(ROUTES[name].body.parse(body), sender(actor), {});
    if (!told.ok) throw new Error(JSON.stringify(told.rejection));
  };
  await tell('lot', { lot: 'CABLE-1', kind: 'cable' }, 'p-112');
  await tell('mounting', { station: 'rough-in', lot: 'CABLE-1', kind: 'cable' }, 'p-112');
  for (const home of [FAILING, ...OTHERS]) {
    const serial = `${home}A`;
    await tell('home', { home, model: 'Alder', design: { wind: 'I' }, sections: [{ serial }] }, 'p-150');
    await tell('start', { serial, at: 'rough-in' }, 'p-112');
    await tell('work', { serial, operation: 'wired', crew: 'electrical', station: 'rough-in' }, 'p-112');
    await tell('work', { serial, operation: 'boarded', crew: 'drywall', station: 'drywall' }, 'p-129');
    await tell('work', { serial, operation: 'proved', crew: 'quality', station: 'final' }, 'p-146');
    await tell('move', { serial, to: 'final' }, 'p-112');
  }
};

/** Goal: from a defect found behind the boards to the label, as the people of the plant tap it. */
describeInBrowser('a defect found after drywall', (found) => {
  const complaints: string[] = [];
  let plant: BrowserPlant;
  let browser: Browser;
  let lead: Page;
  let manager: Page;
  let agency: Page;

  beforeAll(async () => {
    plant = await openBrowserPlant(buildSeven);
    browser = await launch(found);
    lead = await openWindow(browser, PHONE, complaints);
    manager = await openWindow(browser, DESK, complaints);
    agency = await openWindow(browser, DESK, complaints);
    await signIn(lead, plant.address, 'Station lead');
    await signIn(manager, plant.address, 'Quality manager');
    await signIn(agency, plant.address, 'Agency inspector');
  }, 240_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  const serial = `${FAILING}A`;
  const missing = async (): Promise<readonly string[]> => {
    const { missing: rows } = await (
      await manager.request.get(`${plant.address}/api/sections/${serial}/release`)
    ).json();
    return rows.map(({ rule }: { rule: string }) => rule);
  };

  /** Until the section's release says so. */
  const stillOpen = async (wanted: boolean): Promise<void> => {
    for (let tries = 0; (await missing()).includes('defect-open') !== wanted; tries += 1) {
      if (tries > 50) throw new Error(`The defect is ${wanted ? 'not on record' : 'still open'}`);
      await manager.waitForTimeout(100);
    }
  };

  it('is recorded in three taps, found by part of its name', async () => {
    await lead.goto(`${plant.address}/station/final/${serial}`);
    await lead.getByRole('heading', { name: serial, exact: true }).waitFor();
    await lead.getByRole('button', { name: 'Defect', exact: true }).click();
    await lead.getByRole('searchbox').fill('brach wire');
    await lead.getByRole('button', { name: 'Branch wire', exact: true }).click();
    await lead.getByRole('button', { name: 'Pierced', exact: true }).click();
    await lead.getByText(/Likely cause: “Boarded”/).waitFor();
    await lead.getByRole('button', { name: 'Kitchen', exact: true }).click();
    await lead
      .getByRole('heading', { name: /Branch wire: Pierced/i })
      .or(lead.getByText(/Branch wire.*pierced/i))
      .first()
      .waitFor();
    await stillOpen(true);
  });

  it('is contained: six other sections are held with one tap', async () => {
    await manager.goto(`${plant.address}/defects`);
    const row = manager.getByRole('listitem').filter({ hasText: serial });
    await row.getByRole('link', { name: 'Who shares it?' }).click();
    await manager.getByRole('button', { name: 'crew and day', exact: true }).waitFor();
    for (const other of OTHERS) await manager.getByText(`${other}A`).first().waitFor();
    const boxes = await manager.getByRole('checkbox').all();
    for (const box of boxes) {
      const name = await box.evaluate((node) => node.closest('label')?.textContent ?? '');
      if (!OTHERS.some((other) => name.includes(`${other}A`))) await box.uncheck();
    }
    await manager.getByRole('button', { name: 'Hold these 6 sections' }).click();
    await manager.getByRole('heading', { name: /contained sections are open/ }).waitFor();

    const { holds } = await (await manager.request.get(`${plant.address}/api/holds`)).json();
    const contained = holds.filter(({ reason }: { reason: string }) => reason === 'contained');
    const subjects = contained.map(({ subject }: { subject: string }) => subject).sort();
    expect(subjects).toStrictEqual(expect.arrayContaining(OTHERS.map((other) => `${other}A`)));
  });

  it('is looked for on each of the six, and each goes free', async () => {
    for (const other of OTHERS) {
      const row = manager.getByRole('row').filter({ hasText: `${other}A` });
      await row.getByRole('button', { name: 'Nothing of the kind' }).click();
      await row.getByText('Clear', { exact: true }).waitFor();
    }
    const { holds } = await (await manager.request.get(`${plant.address}/api/holds`)).json();
    const held = holds.filter(({ subject }: { subject: string }) =>
      OTHERS.some((one) => subject === `${one}A`),
    );
    expect(held.filter(({ reason }: { reason: string }) => reason === 'contained')).toStrictEqual([]);
  });

  it('is repaired to an approved detail, reworked by the crew, and verified by someone else', async () => {
    await manager.goto(`${plant.address}/defects`);
    const row = manager.getByRole('listitem').filter({ hasText: serial });
    await row.getByRole('button', { name: 'Decide', exact: true }).click();
    await row.getByRole('button', { name: 'Repair', exact: true }).click();
    await row.getByLabel('Approved detail, drawing or letter').fill('RD-04');
    await row.getByRole('button', { name: 'Record the decision' }).click();
    await row.getByText('Repair', { exact: false }).first().waitFor();

    await lead.goto(`${plant.address}/station/final/${serial}`);
    await lead.getByRole('button', { name: 'Rework is done' }).click();
    await row.getByRole('button', { name: 'Verify: good' }).click();
    await stillOpen(false);
  });

  it('no longer keeps the section: the agency has seen it, and the label goes on', async () => {
    await manager.goto(`${plant.address}/release/${serial}`);
    await manager.getByText('No label yet: 1 thing is missing.').waitFor();
    await agency.goto(`${plant.address}/agency`);
    await agency.getByRole('button', { name: `${serial} seen at Final` }).click();
    await manager.getByText('Nothing is missing. The label may go on.').waitFor();
    await manager.getByRole('button', { name: 'Affix the label' }).click();
    await manager.getByText(/Label DEM\d{6} is on, since/).waitFor();
    expect(complaints).toStrictEqual([]);
  });
});
