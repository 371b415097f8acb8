import type { Browser, Page } from 'playwright-core';
import { describeInBrowser, launch } from '../support/browser';
import { DESK, openBrowserPlant, openWindow, signByHand, signIn } from '../support/browser-plant';
import type { BrowserPlant } from '../support/browser-plant';
import { buildUpTo } from '../support/build-up';

describeInBrowser('a revision of the rulebook', (found) => {
  const complaints: string[] = [];
  let plant: BrowserPlant;
  let browser: Browser;
  let drafter: Page;

  const sender = (key: string) => ({ key, actor: 'office', assurance: 'token' as const });

  beforeAll(async () => {
    plant = await openBrowserPlant(async (opened) => {
      await buildUpTo(opened, { home: 'T-500', station: 'floor', except: [] });
      // What a colleague at another desk has drafted, for the one who is signed in to approve.
      const { files = {} } = (await opened.rulebook.files({ revision: null })) ?? {};
      const handed = await opened.rulebook.propose(
        {
          files: { ...files, 'values.csv': (files['values.csv'] ?? '').replace('>= 0.375', '>= 0.5') },
          base: 1,
        },
        sender('handed-in'),
      );
      expect(handed.ok).toBe(true);
    });
    browser = await launch(found);
    drafter = await openWindow(browser, DESK, complaints);
    await signIn(drafter, plant.address, 'Quality manager');
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  it('is read: an operation with its neighbours drawn, found by its name, reached by keyboard', async () => {
    await drafter.goto(`${plant.address}/rulebook`);
    await drafter.getByRole('heading', { name: 'Rulebook, revision 1' }).waitFor();
    await drafter.getByLabel('Search operations and values').fill('drywall');
    await drafter.locator('summary').first().click();
    await drafter.getByRole('button', { name: 'Show' }).first().click();
    const graph = drafter.getByRole('group', { name: /^What .* needs/ });
    expect(await graph.getByRole('button').count()).toBeGreaterThan(2);
    await graph.getByRole('button').nth(1).press('Enter');
    expect(await graph.locator('[aria-current=true]').count()).toBe(1);
  });

  it('is drawn whole, each station below the one before; what is chosen shows what it waits for', async () => {
    await drafter.goto(`${plant.address}/rulebook`);
    const whole = drafter.getByRole('group', { name: 'The whole line' });
    await whole.waitFor();
    const boxes = whole.getByRole('button');
    expect(await boxes.count()).toBeGreaterThan(8);
    await boxes.nth(2).press('Enter');
    expect(await whole.locator('.book-edge.near').count()).toBeGreaterThan(0);
    await boxes.nth(2).press('Enter');
    expect(await whole.locator('.book-edge.near').count()).toBe(0);
    await drafter.getByLabel('Search operations and values').fill('serial');
    expect(await whole.locator('.book-box.faint').count()).toBeGreaterThan(0);
  });

  it('is changed: every problem with file, row and column, then the difference and the dry run', async () => {
    await drafter.goto(`${plant.address}/rulebook/change`);
    const text = drafter.getByLabel('The file’s text').or(drafter.getByLabel("The file's text"));
    const before = await text.inputValue();
    await text.fill(before.replace('>= 0.375', '>= three eighths'));
    await drafter.getByRole('button', { name: 'Look at it' }).click();
    const problem = drafter.getByRole('row').filter({ hasText: 'values.csv' });
    await problem.first().waitFor();
    expect(await problem.first().getByRole('cell').allInnerTexts()).toStrictEqual(
      expect.arrayContaining(['2', 'required']),
    );

    await text.fill(before.replace('>= 0.375', '>= 0.4375'));
    await drafter.reload();
    await drafter.getByRole('button', { name: 'Look at it' }).click();
    await drafter.getByText('Character height: at least 3/8 in becomes at least 7/16 in').first().waitFor();
    await drafter.getByRole('heading', { name: /It would change something for/ }).waitFor();
  });

  it('is handed in, and its drafter may not approve it', async () => {
    await drafter.getByLabel('Why').fill('By letter 26-115');
    await drafter.getByRole('button', { name: 'Hand in for approval' }).click();
    await drafter.getByText('Handed in. Somebody else approves it.').waitFor();
    await drafter.goto(`${plant.address}/rulebook/approve`);
    await drafter.getByRole('heading', { name: '2 revisions wait for approval' }).waitFor();
    await drafter.getByText('You drafted it: somebody else approves it.').waitFor();
  });

  it('is issued by a second person, with the agency’s approval and not without it', async () => {
    const other = drafter.locator('section').filter({ hasText: 'at least 1/2 in' }).first();
    await other.getByRole('button', { name: 'Approve and issue' }).click();
    await signByHand(drafter, plant.address);
    await other.getByText("Give the inspection agency's approval").waitFor();
    await other.getByLabel("Agency's approval, reference").fill('letter 26-114');
    await other.getByLabel("Agency's approval, day").fill('2026-03-02');
    await other.getByRole('button', { name: 'Approve and issue' }).click();
    await drafter.getByText('Issued as revision 2.').waitFor();
    await drafter.getByText('Another revision was issued since').waitFor();
    await drafter.goto(`${plant.address}/rulebook`);
    await drafter.getByRole('heading', { name: 'Rulebook, revision 2' }).waitFor();
    await drafter.getByText(/agency: letter 26-114, 2026-03-02/).waitFor();
  });

  it('judges a home on the line once that is decided, on the paper that goes with it', async () => {
    await drafter.goto(`${plant.address}/traveler/T-500A`);
    await drafter.getByRole('heading', { name: 'Build plan of T-500A' }).waitFor();
    await drafter.getByText('at least 3/8 in', { exact: true }).first().waitFor();
    await drafter.getByRole('button', { name: 'Judge this home by revision 2 from now on' }).click();
    await drafter.getByText('at least 1/2 in', { exact: true }).first().waitFor();
    await drafter
      .getByText(/Revision 2/)
      .first()
      .waitFor();
  });

  it('is run over history, and lists what it would not have accepted', async () => {
    await drafter.goto(`${plant.address}/rulebook/history`);
    await drafter.getByRole('button', { name: 'Run' }).click();
    await drafter.getByText(/findings on \d+ sections/).waitFor();
    expect(await drafter.getByRole('row').count()).toBeGreaterThan(1);
  });

  it('is deviated from on one home, by a letter, and its plan says so from then on', async () => {
    await drafter.goto(`${plant.address}/traveler/T-500A`);
    await drafter.getByText('Approve a deviation or a substitute').click();
    await drafter.getByLabel('Operation', { exact: true }).selectOption({ label: 'Serial number stamped' });
    await drafter.getByLabel('Of what').selectOption({ label: 'Character height' });
    await drafter.getByLabel('Allowed instead').fill('>= 0.25');
    await drafter.getByLabel('Approval, number and date').fill('letter 26-120');
    await drafter.getByRole('button', { name: 'Approve for this home' }).click();
    await drafter.getByText('Approved. The plan below asks it from now on.').waitFor();
    await drafter.getByText('at least 1/4 in', { exact: true }).first().waitFor();
  });

  it('follows an order changed in mid-line, once what that changes has been looked at', async () => {
    await drafter.getByText('Change the order of this home').click();
    await drafter.getByLabel('What changes').selectOption({ index: 1 });
    await drafter.getByLabel('To', { exact: true }).selectOption({ index: 1 });
    await drafter.getByRole('button', { name: 'Add this change' }).click();
    expect(await drafter.getByRole('button', { name: 'Change the order', exact: true }).count()).toBe(0);
    await drafter.getByRole('button', { name: 'Look what it changes' }).click();
    await drafter.getByLabel('Why').fill('Asked for by the buyer');
    await drafter.getByRole('button', { name: 'Change the order', exact: true }).click();
    await drafter.getByRole('button', { name: 'Add this change' }).waitFor({ state: 'detached' });
    await drafter.goto(`${plant.address}/home/T-500`);
    await drafter
      .getByText(/Order changed|order changed/)
      .first()
      .waitFor();
  });

  it('never makes the browser complain', () => {
    expect(complaints).toStrictEqual([]);
  });
});
