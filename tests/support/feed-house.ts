import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { feedSecrets, mailOver, openFeed, openFeedRows, reachWith } from '@libs/plant';
import type { Feed, FeedParts, FeedWish, MailSettings } from '@libs/plant';
import { WET_HALF } from './demonstration-rulebook';
import { openSmallPlant } from './small-plant';
import type { SmallPlant } from './small-plant';

const { role: _role, sections: _sections, ...HOME_DESIGN } = WET_HALF;

/** A small plant whose news goes out only when a test says so, by a clock that the test sets. */
export type FeedHouse = {
  readonly small: SmallPlant;
  readonly folder: string;
  readonly faults: unknown[];
  readonly feed: () => Feed;
  /** The database is gone from under it, as when the process dies: what was not kept is not kept. */
  readonly crash: () => Promise<void>;
  /** Opened anew on the same files. */
  readonly reopen: () => Promise<Feed>;
  /** As if that much time had gone by; then whatever is due is tried. */
  readonly later: (ms: number) => Promise<void>;
  /** A home of two sections ordered: a handful of events. */
  readonly tellSome: (home: string) => Promise<void>;
  readonly clear: () => Promise<void>;
};

export const WHOLE = { events: 'all', alarms: true, checkpoints: true, clocks: true } as const;
export const wishFor = (target: string, more: Partial<FeedWish> = {}): FeedWish => ({
  kind: 'url',
  target,
  wants: WHOLE,
  language: 'en',
  fromStart: false,
  ...more,
});

type More = {
  readonly opened?: readonly string[];
  readonly mail?: MailSettings;
  readonly asks?: FeedParts['asks'];
};

export const openFeedHouse = async ({
  opened = ['127.0.0.0/8'],
  mail,
  asks,
}: More = {}): Promise<FeedHouse> => {
  const small = await openSmallPlant();
  const folder = mkdtempSync(join(tmpdir(), 'studbook-feed-'));
  const faults: unknown[] = [];
  let ahead = 0;
  let rows: FeedParts['rows'];
  const open = async (): Promise<Feed> => {
    rows = await openFeedRows({ sqlite: join(folder, 'feed.db') });
    return openFeed({
      rows,
      tail: small.plant.tail,
      asks: asks ?? small.plant.asks,
      secrets: feedSecrets(join(folder, 'keys')),
      reach: reachWith(opened),
      mail: mail === undefined ? null : mailOver(mail),
      clock: () => small.clock.now + ahead,
      isOurs: small.plant.writes,
      trouble: (fault) => faults.push(fault),
      byItself: false,
    });
  };
  let feed = await open();
  return {
    small,
    folder,
    faults,
    feed: () => feed,
    crash: () => rows.close(),
    reopen: async () => {
      feed = await open();
      return feed;
    },
    later: async (ms) => {
      ahead += ms;
      await feed.round();
    },
    tellSome: async (home) => {
      const sections = [
        { serial: `${home}-A`, design: { role: 'wet' } },
        { serial: `${home}-B`, design: { role: 'dry' } },
      ];
      await small.tell('home', { home, model: 'Birch 18', design: HOME_DESIGN, sections }, 'manager');
    },
    clear: async () => {
      await feed.close();
      await small.clear();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};
