import type { Envelope } from '@libs/kernel';
import { takingTurns, WriterSuperseded } from '@libs/ledger';
import type { Ledger, Sql } from '@libs/ledger';
import type { Subscription } from 'rxjs';
import { detailsAtHand } from '../at-hand';
import type { AnyView } from '../view';
import { advance } from './advance';
import { openPositions } from './positions';
import { catchUp, rebuild } from './rebuild';
import type { BuiltFrom, Progress } from './rebuild';

/** Details kept in memory: the sections at work and their homes, in every view, and room to spare. */
const DETAILS_KEPT = 4_000;
/** How long events may wait to be written into the views while nobody asks. A commit costs the same for one as for many. */
const LINGER_MS = 250;
/** As many are written at once, however little time has passed. */
const MOST_WAITING = 4_000;

export type ViewKeeper = {
  /** Resolves when the views say all that is committed by now. */
  readonly current: () => Promise<void>;
  /** The view tables as they are now: each question waits until it is answered from all that is committed. */
  readonly reader: Sql;
  /** Every view from the ledger anew; questions wait until it is done. */
  readonly rebuild: (progress: Progress) => Promise<void>;
  /** Writes what waits, and keeps the views no longer. */
  readonly close: () => Promise<void>;
};

export type KeptFrom = BuiltFrom & Pick<Ledger, 'commits'>;

/**
 * Keeps the views just behind the log. No decision reads a view, so none need be in the writer's transaction; a
 * question makes them current before it is answered, and so costs the events that came since the last. What is
 * lost on the way (a crash, a full disk) is taken from the log again, from the position the tables say they are at.
 */
export const viewKeeper = (ledger: KeptFrom, views: readonly AnyView[]): ViewKeeper => {
  const upkeep = new Upkeep(ledger, views);
  return {
    current: () => upkeep.current(),
    reader: {
      dialect: ledger.reader.dialect,
      query: async (sql, parameters) => {
        await upkeep.current();
        return ledger.reader.query(sql, parameters);
      },
    },
    rebuild: (progress) => upkeep.rebuild(progress),
    close: () => upkeep.close(),
  };
};

class Upkeep {
  private readonly atHand = detailsAtHand(DETAILS_KEPT);
  private readonly inTurn = takingTurns();
  private readonly heard: Subscription;
  private waiting: Envelope[] = [];
  private timer: NodeJS.Timeout | undefined;
  private positions: ReadonlyMap<string, number> | undefined;
  /** Whether what waits follows on what is in the tables is not known, or it is known that it does not. */
  private isBehind = true;

  constructor(
    private readonly ledger: KeptFrom,
    private readonly views: readonly AnyView[],
  ) {
    this.heard = ledger.commits.subscribe((events) => {
      this.hear(events);
    });
  }

  current(): Promise<void> {
    return this.inTurn(() => (this.heard.closed ? Promise.resolve() : this.settle()));
  }

  rebuild(progress: Progress): Promise<void> {
    return this.inTurn(async () => {
      this.isBehind = true;
      await rebuild(this.ledger, this.views, progress);
    });
  }

  async close(): Promise<void> {
    try {
      await this.current();
    } finally {
      this.heard.unsubscribe();
      this.takeWaiting();
    }
  }

  private hear(events: readonly Envelope[]): void {
    for (const event of events) this.waiting.push(event);
    if (this.waiting.length >= MOST_WAITING) this.writeInTime();
    else this.timer ??= setTimeout(() => this.writeInTime(), LINGER_MS).unref();
  }

  /** What fails with nobody waiting is done again for the next question, which then hears of it. */
  private writeInTime(): void {
    this.current().catch(() => undefined);
  }

  private async settle(): Promise<void> {
    try {
      if (this.isBehind) await this.catchUp();
      if (this.waiting.length > 0) await this.writeWaiting();
    } catch (error) {
      this.isBehind = true;
      this.takeWaiting();
      // The views are then the other writer's to keep, and are read as it leaves them.
      if (error instanceof WriterSuperseded) this.heard.unsubscribe();
      throw error;
    }
  }

  private async catchUp(): Promise<void> {
    this.atHand.clear();
    this.positions = undefined;
    await catchUp(this.ledger, this.views, () => undefined);
    this.isBehind = false;
  }

  private writeWaiting(): Promise<void> {
    return this.ledger.transaction(async (sql) => {
      const { views, atHand } = this;
      const positions = this.positions ?? (await openPositions(views, sql));
      this.positions = await advance(this.takeWaiting(), { views, positions, atHand }, sql);
    });
  }

  private takeWaiting(): readonly Envelope[] {
    clearTimeout(this.timer);
    this.timer = undefined;
    const taken = this.waiting;
    this.waiting = [];
    return taken;
  }
}
