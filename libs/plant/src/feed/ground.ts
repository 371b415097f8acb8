import type { Envelope } from '@libs/kernel';
import type { Observable } from 'rxjs';
import type { NameBook } from '../names';
import type { Reach } from './addresses';
import type { Mail } from './letters';
import type { FeedSecrets } from './secrets';
import type { FeedRows } from './subscription';

/** The ledger as the feed follows it. */
export type Tail = {
  readonly ledger: string;
  readonly head: () => Promise<number>;
  readonly after: (position: number, limit: number) => Promise<readonly Envelope[]>;
  /** "There is something up to here": news, never truth. */
  readonly heads: Observable<number>;
  readonly names: NameBook;
};

/** What every part of the feed works with. */
export type FeedGround = {
  readonly rows: FeedRows;
  readonly tail: Tail;
  readonly secrets: FeedSecrets;
  readonly reach: Reach;
  /** Null: no mail server is set. */
  readonly mail: Mail | null;
  readonly clock: () => number;
  readonly isClosed: () => boolean;
};
