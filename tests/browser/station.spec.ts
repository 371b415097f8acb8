import { createHash } from 'node:crypto';
import type { AnswerOf } from '@libs/contracts';
import exifr from 'exifr';
import type { Browser, Page } from 'playwright-core';
import { describeInBrowser, launch } from '../support/browser';
import { PHONE, openBrowserPlant, openWindow, scan, signIn } from '../support/browser-plant';
import type { BrowserPlant } from '../support/browser-plant';
import { buildUpTo } from '../support/build-up';
import { phoneJpeg } from '../support/pictures';

/** As a phone gives it: with a place, an owner, and held upright. */
const PHOTO = phoneJpeg();

/** Names of the photos that wait in the page's own database. */
const WAITING = `new Promise((resolve) => {
  const opening = indexedDB.open('studbook');
  opening.onsuccess = () => {
    const keys = opening.result.transaction('photos').objectStore('photos').getAllKeys();
    keys.onsuccess = () => resolve(keys.result);
  };
})`;

/** Goal: what a lead taps and scans at a station is what the record holds, also when the network goes away. */
describeInBrowser('a station', (found) => {
  const complaints: string[] = [];
  let plant: BrowserPlant;
  let browser: Browser;
  let page: Page;

  beforeAll(async () => {
    plant = await openBrowserPlant(async (opened) => {
      await buildUpTo(opened, { home: 'T-500', station: 'rough-in', except: [] });
      await buildUpTo(opened, { home: 'T-600', station: 'drywall', except: [] });
    });
    browser = await launch(found);
    page = await openWindow(browser, PHONE, complaints);
    await signIn(page, plant.address, 'Station lead');
  }, 120_000);
  afterAll(async () => {
    await browser.close();
    await plant.clear();
  });

  const open = async (path: string, heading: string): Promise<void> => {
    await page.goto(`${plant.address}${path}`);
    await page.getByRole('heading', { name: heading, exact: true }).waitFor();
  };
  const section = async (serial: string, at: string): Promise<AnswerOf<'section'>> =>
    (await page.request.get(`${plant.address}/api/sections/${serial}?at=${at}`)).json();
  const operation = async (serial: string, at: string, id: string) =>
    (await section(serial, at)).operations.find((card) => card.operation === id);

  it('finds a serial typed with a letter for a digit, in any case, with spaces', async () => {
    await open('/station/rough-in', 'Scan a section');
    await page.getByLabel('Scan a serial, or type it').fill(' t-5oo a');
    await page.getByRole('button', { name: 'Open' }).click();
    await page.getByText('Did you mean one of these?').waitFor();
    await page.getByRole('link', { name: 'T-500A' }).click();
    await page.getByRole('heading', { name: 'T-500A', exact: true }).waitFor();
  });

  it('judges a value on the keypad before it is sent', async () => {
    await open('/station/rough-in/T-500A', 'T-500A');
    await page.getByRole('button', { name: 'Sign off Rough-in' }).click();
    const edge = page.getByRole('group', { name: /Bored hole or cable to edge/ });
    await edge.getByRole('button', { name: 'Enter', exact: true }).click();
    await edge.getByRole('button', { name: '1', exact: true }).click();
    await edge.getByText('Does not meet it').waitFor();
    await edge.getByRole('button', { name: 'Fractions of an inch' }).click();
    await edge.getByRole('button', { name: '1/4', exact: true }).click();
    await edge.getByText('Meets it').waitFor();
    expect(await edge.getByRole('textbox').inputValue()).toBe('1 1/4');
  });

  it('hears a scan while a field is being filled in, and keeps what stood there', async () => {
    const edge = page.getByRole('group', { name: /Bored hole or cable to edge/ });
    await edge.getByRole('textbox').focus();
    await scan(page, 'T-600A');
    await page.getByRole('heading', { name: 'T-600A', exact: true }).waitFor();
    await scan(page, 'T-500A');
    await page.getByRole('heading', { name: 'T-500A', exact: true }).waitFor();
    expect(await edge.getByRole('textbox').inputValue()).toBe('1 1/4');
  });

  it('keeps an open form through a reload, and Back closes the form, not the section', async () => {
    await page.reload();
    const edge = page.getByRole('group', { name: /Bored hole or cable to edge/ });
    await edge.waitFor();
    expect(await edge.getByRole('textbox').inputValue()).toBe('1 1/4');

    await page.goBack();
    await edge.waitFor({ state: 'detached' });
    await page.getByRole('heading', { name: 'T-500A', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Sign off Rough-in' }).click();
    expect(await edge.getByRole('textbox').inputValue()).toBe('1 1/4');
  });

  it('is signed off once: all as planned, except at a place', async () => {
    await page.getByRole('button', { name: /^As planned/ }).click();
    const boxes = page
      .getByRole('listitem')
      .filter({ has: page.getByRole('heading', { name: 'Boxes set' }) });
    await boxes.getByRole('button', { name: 'Except at' }).click();
    await boxes.getByRole('button', { name: /^kitchen$/i }).click();
    await page
      .getByLabel('Take a photo')
      .setInputFiles({ name: 'boxes.jpg', mimeType: 'image/png', buffer: PHOTO });
    await page.getByText(/^One photo/).waitFor();
    await page.getByRole('button', { name: /^Sign: \d+ of \d+ done/ }).click();
    await page.getByText('Rough-in is signed off.').waitFor();

    expect(await operation('T-500A', 'rough-in', 'boxes-set')).toMatchObject({
      mark: 'open-at-places',
      except: ['kitchen'],
    });
    expect((await operation('T-500A', 'rough-in', 'wired'))?.done?.values).toContainEqual({
      characteristic: 'edge-distance',
      value: '1.25',
      unit: '[in_i]',
    });
  });

  const photosIn = async (home: string): Promise<readonly string[]> => {
    const story = await page.request.get(`${plant.address}/api/homes/${home}/history`);
    const { entries }: AnswerOf<'history'> = await story.json();
    return entries.flatMap(({ data }) => (data['photos'] as readonly string[] | undefined) ?? []);
  };
  const shown = async (photo: string): Promise<Buffer> =>
    (await page.request.get(`${plant.address}/api/photos/${photo}`)).body();

  it('keeps the photo under the fingerprint the record names, without its place and its owner', async () => {
    // The history's other photos are of the plant's own making, and were never brought here.
    const kept = await Promise.all((await photosIn('T-500')).map(shown));
    const photo = kept.find((bytes) => bytes.subarray(0, 3).toString('hex') === 'ffd8ff');
    const bytes = photo ?? Buffer.alloc(0);

    expect(await photosIn('T-500')).toContain(createHash('sha256').update(bytes).digest('hex'));
    expect(PHOTO.includes('Prairie Road')).toBe(true);
    expect(bytes.includes('Prairie Road')).toBe(false);
    expect(await exifr.gps(bytes)).toBeUndefined();
  });

  it('shows the open place on its row', async () => {
    await page.getByRole('button', { name: 'Go on' }).click();
    await page.getByRole('button', { name: /Boxes set Done in part · open at kitchen/i }).waitFor();
  });

  const openDefects = async () =>
    (await section('T-500A', 'rough-in')).defects.filter(({ state }) => state === 'open');

  it('records a defect in three taps', async () => {
    await page.getByRole('button', { name: 'Defect', exact: true }).click();
    for (const step of [/1 of 3/, /2 of 3/])
      await page.getByRole('group', { name: step }).getByRole('button').first().click();
    await page
      .getByRole('group', { name: /3 of 3/ })
      .getByRole('button', { name: /^kitchen$/i })
      .click();
    await page.getByText(/^Defect recorded:/).waitFor();
    expect(await openDefects()).toMatchObject([
      { class: 'nonconformance', place: 'kitchen', foundAt: 'rough-in' },
    ]);
  });

  it('lets an inspector withdraw a defect recorded by mistake, in one tap', async () => {
    const other = await openWindow(browser, PHONE, complaints);
    await signIn(other, plant.address, 'Inspector');
    await other.goto(`${plant.address}/station/rough-in/T-500A`);
    await other.getByRole('button', { name: 'Recorded by mistake: withdraw' }).click();
    await other.getByText(/^Closed:/).waitFor();
    expect(await openDefects()).toStrictEqual([]);
    await other.context().close();
  });

  it('moves an entry made on the wrong half in one tap', async () => {
    await open('/station/rough-in/T-500A', 'T-500A');
    await page.getByRole('button', { name: /^Wired, panel set/ }).click();
    await page.getByRole('button', { name: 'Wrong serial?' }).click();
    await page.getByRole('button', { name: 'It belongs to T-500B' }).click();
    await page.getByText('Wired, panel set: now on T-500B.').waitFor();
    expect((await operation('T-500A', 'rough-in', 'wired'))?.done).toBeNull();
    expect((await operation('T-500B', 'rough-in', 'wired'))?.done).not.toBeNull();
  });

  it('mounts the lot that is scanned while its form is open', async () => {
    await open('/station/drywall/T-600A', 'T-600A');
    const [inUse] = (await section('T-600A', 'drywall')).lots;
    const facts: AnswerOf<'plant'> = await (await page.request.get(`${plant.address}/api/plant`)).json();
    const kind = facts.lotKinds?.find(({ id }) => id === inUse?.kind)?.name.en ?? '';
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('button', { name: 'Mount a lot' }).click();
    await scan(page, inUse?.lot ?? '');
    expect(await page.getByLabel('Lot number').inputValue()).toBe(inUse?.lot);
    await page.getByRole('group', { name: 'Kind' }).getByRole('button', { name: kind, exact: true }).click();
    await page.getByRole('button', { name: 'Mount this lot' }).click();
    await page.getByText(`Lot ${inUse?.lot ?? ''} in use`).waitFor();
  });

  it('sends a section on to the next station, with its open work carried along', async () => {
    await open('/station/rough-in/T-500A', 'T-500A');
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('button', { name: 'Move on to Roof set' }).click();
    await page.getByText('Now at Roof set. Open work goes along.').waitFor();
    await open('/station/roof-set/T-500A', 'T-500A');
    await page.getByRole('heading', { name: 'Still open from earlier stations' }).waitFor();
    expect((await section('T-500A', 'roof-set')).carried.map((card) => card.operation)).toContain('wired');
  });

  it('pulls a section off the line for a reason, and takes it back', async () => {
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('button', { name: 'Pull it off the line' }).click();
    await page.getByRole('group', { name: 'Reason' }).getByRole('button').first().click();
    await page.getByRole('button', { name: 'Pull off the line', exact: true }).click();
    await page.getByText('The section is off the line.').waitFor();
    await page.getByRole('button', { name: 'Go on' }).click();
    await page.getByRole('button', { name: 'Return it to the line at Roof set' }).click();
    await page.getByText('Back on the line at Roof set.').waitFor();
    expect(await section('T-500A', 'roof-set')).toMatchObject({ stage: 'on-line', station: 'roof-set' });
  });

  it('puts a value right that was written down wrong', async () => {
    await open('/station/floor/T-500A', 'T-500A');
    await page.getByRole('button', { name: /^Floor decked/ }).click();
    await page.getByRole('button', { name: 'Put values right' }).click();
    const edge = page.getByRole('group', { name: /spacing/i }).first();
    await edge.getByRole('textbox').fill('5 1/2');
    await page.getByRole('group', { name: 'Reason' }).getByRole('button').first().click();
    await page.getByRole('button', { name: 'Put right', exact: true }).click();
    await page.getByText(/the values are put right/).waitFor();
    expect((await operation('T-500A', 'floor', 'decked'))?.done?.values.map(({ value }) => value)).toContain(
      '5.5',
    );
  });

  it('shows the old value struck through beside the new one in the history', async () => {
    await page.goto(`${plant.address}/home/T-500`);
    await page.getByRole('button', { name: /^Corrections/ }).click();
    expect(await page.locator('del').first().innerText()).toMatch(/\d in$/);
    await page.getByText('5 1/2 in', { exact: true }).waitFor();
  });

  it('keeps an entry nobody answered, says so, and records it once when the network is back', async () => {
    await open('/station/drywall/T-600A', 'T-600A');
    await page.getByRole('button', { name: 'May I cover? Drywalled' }).last().click();
    await page.getByRole('button', { name: 'Record as done: Drywalled' }).click();
    await plant.stop();
    await page.getByRole('button', { name: 'Sign: Drywalled' }).click();
    await page.getByRole('heading', { name: 'Not sent yet' }).waitFor();
    await page.getByText('One entry is not sent yet').waitFor();

    await plant.again();
    await page.getByText('Your entry is recorded.').waitFor();
    const history: AnswerOf<'history'> = await (
      await page.request.get(`${plant.address}/api/homes/T-600/history`)
    ).json();
    const told = history.entries.filter(
      ({ type, data }) => type === 'WorkRecorded' && data['operation'] === 'drywalled',
    );
    expect(told).toHaveLength(1);
  });

  it('sends the very same key when the first answer was lost on its way', async () => {
    const keys: (string | null)[] = [];
    await page.route('**/api/holds', async (route) => {
      keys.push(route.request().headers()['idempotency-key'] ?? null);
      // The server records it; the answer never arrives.
      const answered = await route.fetch();
      if (keys.length === 1) await route.abort('connectionreset');
      else await route.fulfill({ response: answered });
    });
    await open('/station/drywall/T-600A', 'T-600A');
    await page.getByRole('button', { name: 'More' }).click();
    await page.getByRole('button', { name: 'Hold it' }).click();
    await page.getByRole('group', { name: 'Reason' }).getByRole('button').first().click();
    await page.getByRole('button', { name: 'Hold', exact: true }).click();
    await page.getByText('Your entry is recorded.').waitFor();

    expect(keys).toHaveLength(2);
    expect(keys[0]).toBe(keys[1]);
    const byHand = (await section('T-600A', 'drywall')).holds.filter(
      ({ defect, operation: of }) => defect === null && of === null,
    );
    expect(byHand).toHaveLength(1);
  });

  it('keeps a photo that finds no server on this device, under the name the record will have, and brings it later', async () => {
    await open('/station/drywall/T-600A', 'T-600A');
    await page.getByRole('button', { name: 'Defect', exact: true }).click();
    for (const step of [/1 of 3/, /2 of 3/])
      await page.getByRole('group', { name: step }).getByRole('button').first().click();
    await plant.stop();
    await page
      .getByLabel('Take a photo')
      .setInputFiles({ name: 'bath.jpg', mimeType: 'image/jpeg', buffer: PHOTO });
    await page.getByText('Kept on this device until there is a server.').waitFor();
    await page.getByRole('img', { name: 'Photo 1' }).waitFor();
    const [waiting = ''] = await page.evaluate<string[]>(WAITING);

    await plant.again();
    await Promise.all([
      page.waitForResponse((answer) => answer.url().endsWith('/api/photos') && answer.status() === 201),
      page.reload(),
    ]);
    expect(
      createHash('sha256')
        .update(await shown(waiting))
        .digest('hex'),
    ).toBe(waiting);
  });

  it('never makes the browser complain', () => {
    expect(complaints).toStrictEqual([]);
  });
});
