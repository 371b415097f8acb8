import type { CDPSession, Page } from 'playwright-core';
import { findBrowser, launch } from '../../support/browser';
import { PHONE, openBrowserPlant, openWindow, scan, signIn } from '../../support/browser-plant';
import { buildUpTo } from '../../support/build-up';
import type { Contest, Row } from '../bench';

/** What a person still takes as at once, for an answer that is read and not only felt: the goal this project set. */
const AT_ONCE_MS = 150;
/** A plant's tablet beside a machine for developers. */
const SLOWER = 4;
const SCANS = 40;
const SECTIONS = ['T-500A', 'T-600A'] as const;

/**
 * From the page hearing the key that ends the scan to the frame after which the new section's verdict stands on the screen: the
 * heading with its serial, and under it the sentence on what blocks it.
 */
const WATCH = `(() => {
  const seen = (serial) => document.querySelector('h1')?.textContent === serial && document.querySelector('.blocked') !== null;
  window.scanned = (serial) => new Promise((done) => {
    let pressed = 0;
    window.addEventListener('keydown', function hear(event) {
      if (event.key !== 'Enter') return;
      window.removeEventListener('keydown', hear, true);
      pressed = performance.now();
      const look = () => {
        if (!seen(serial)) return requestAnimationFrame(look);
        const channel = new MessageChannel();
        channel.port1.onmessage = () => done(performance.now() - pressed);
        channel.port2.postMessage(0);
      };
      requestAnimationFrame(look);
    }, true);
  });
})()`;

const timed = async (page: Page, serial: string): Promise<number> => {
  const measured = page.evaluate(`window.scanned(${JSON.stringify(serial)})`);
  await scan(page, serial);
  return Number(await measured);
};

const ninetyFifth = (times: readonly number[]): number =>
  [...times].sort((one, other) => one - other)[Math.ceil(times.length * 0.95) - 1] ?? Infinity;

const throttled = async (page: Page): Promise<CDPSession> => {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  return session;
};

const prepare = async (): Promise<Contest> => {
  const found = findBrowser();
  if (found === undefined) throw new Error('No browser found: set CHROMIUM_PATH to a Chromium');
  const plant = await openBrowserPlant(async (opened) => {
    for (const [home, station] of [
      ['T-500', 'rough-in'],
      ['T-600', 'drywall'],
    ] as const)
      await buildUpTo(opened, { home, station, except: ['wire-protected'] });
  });
  const browser = await launch(found);
  const page = await openWindow(browser, PHONE, []);
  await signIn(page, plant.address, 'Station lead');
  await page.goto(`${plant.address}/station/drywall/T-500A`);
  await page.getByRole('heading', { name: 'T-500A', exact: true }).waitFor();
  await page.evaluate(WATCH);
  await throttled(page);
  return {
    ours: async () => {
      const times: number[] = [];
      for (let at = 0; at < SCANS; at += 1)
        times.push(await timed(page, SECTIONS[(at + 1) % 2] ?? SECTIONS[0]));
      return ninetyFifth(times);
    },
    peer: () => Promise.resolve(AT_ONCE_MS),
    close: async () => {
      await browser.close();
      await plant.clear();
    },
  };
};

export const scanToVerdict: Row = {
  name: 'scan-to-verdict',
  unit: 'ms (p95)',
  better: 'less',
  peerName: 'at once',
  goal: 1,
  prepare,
};
