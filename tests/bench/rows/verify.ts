import { allProven, packedFiles, verifyPacked } from '@libs/proof';
import { paperEvents, paperPacket } from '../../support/paper-ledger';
import { TOOLS } from '../../support/proof-tools';
import type { Contest, Row } from '../bench';

const GOAL_MS = 150;
/** Of which the home has 600, in a ledger as long as a year of a plant's. */
const HOME_EVENTS = 600;

const prepare = (size: number): Promise<Contest> => {
  const photos = Array.from({ length: 40 }, (_, n) => [`photos/${n}.jpg`, Buffer.alloc(200_000, n)] as const);
  // Four streams of the home's own, the rest others', so that these have the home's share of all events.
  const events = paperEvents(Math.max(size, 4 * HOME_EVENTS), Math.round(size / (HOME_EVENTS / 4)) - 4);
  const { files, own } = paperPacket(events, { beside: new Map(photos) });
  const zip = packedFiles(files);
  process.stderr.write(`verify: ${own.length} events of ${events.length}, ${zip.length} bytes\n`);
  const once = (): number => {
    const began = performance.now();
    if (!allProven(verifyPacked(zip, TOOLS))) throw new Error('The packet is not proven');
    return performance.now() - began;
  };
  return Promise.resolve({
    ours: () => Promise.resolve(once()),
    peer: () => Promise.resolve(GOAL_MS),
    close: () => Promise.resolve(),
  });
};

/** A packet of a home with 600 to 850 events (by size) and 40 photos of 200 kB: every byte of it. */
export const verifyRow: Row = {
  name: 'verify',
  unit: 'ms',
  better: 'less',
  peerName: 'the goal',
  goal: 1,
  prepare,
};
