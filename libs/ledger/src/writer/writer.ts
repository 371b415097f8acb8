import type { Envelope } from '@libs/kernel';
import { Subject } from 'rxjs';
import type { Observable } from 'rxjs';
import { CommitFailed, Fault, LedgerClosed, TooManyWaiting, WriterSuperseded } from '../fault';
import type { Asking, Outcome, Sql } from '../port';
import { decideBatch } from './batch';
import type { Decided } from './batch';
import { digestOf } from './digest';
import { written } from './envelope';
import { CommitUncertain, KeyTaken } from './log-store';
import type { LogStore, Tenure } from './log-store';
import { BATCH_LIMIT, WAITING_LIMIT } from './queue';
import type { Waiting } from './queue';
import type { Verdict } from './stage';
import { statesKept } from './states';
import type { Held } from './states';
import { takingTurns } from './turns';

export type WriterParts = {
  readonly ledger: string;
  readonly store: LogStore;
  /** Milliseconds since 1970, UTC. */
  readonly clock: () => number;
  /** Key of the digest that compares a repeated idempotency key. */
  readonly secret: Buffer;
};

/** The one writer of a ledger: takes all that wait, decides each, commits them together, then answers. */
export class Writer {
  private readonly committed = new Subject<readonly Envelope[]>();
  readonly commits: Observable<readonly Envelope[]> = this.committed.asObservable();
  private readonly heard = new Subject<number>();
  readonly news: Observable<number> = this.heard.asObservable();
  private readonly states = statesKept();
  private readonly inTurn = takingTurns();
  private readonly epoch: number;
  private waiting: Waiting[] = [];
  private draining: Promise<void> | undefined;
  private ended: Fault | undefined;
  /** Undefined after a failure: where the log stands has to be read again. */
  private tenure: Tenure | undefined;

  constructor(
    private readonly parts: WriterParts,
    tenure: Tenure,
  ) {
    this.epoch = tenure.epoch;
    this.tenure = tenure;
  }

  async ask(asking: Asking): Promise<Outcome> {
    if (this.ended !== undefined) throw this.ended;
    if (this.waiting.length >= WAITING_LIMIT) throw new TooManyWaiting(this.waiting.length);

    const digest = digestOf(this.parts.secret, asking.content);
    return new Promise((answer, fail) => {
      this.waiting.push({ asking, digest, answer, fail });
      this.draining ??= this.drain();
    });
  }

  /** A committed state, when the writer has it at hand. */
  held(stream: string): Held | undefined {
    return this.states.get(stream);
  }

  /** A transaction with no commit in between. */
  transaction<T>(work: (sql: Sql) => Promise<T>): Promise<T> {
    return this.inTurn(() => this.parts.store.transaction(this.epoch, work));
  }

  /** What fails here fails the next commit too, and is heard there: until then the lease has time left. */
  async renew(): Promise<void> {
    await this.inTurn(() => this.parts.store.renew(this.epoch)).catch((error: unknown) => {
      this.lost(error);
    });
  }

  /** What waits is still recorded; what comes later is refused. */
  async close(): Promise<void> {
    this.ended ??= new LedgerClosed(this.parts.ledger);
    await this.draining;
    await this.inTurn(() => this.parts.store.release(this.epoch));
    this.committed.complete();
    this.heard.complete();
  }

  private async drain(): Promise<void> {
    while (this.waiting.length > 0) {
      // Those just answered get to ask again first, so that they share the next commit.
      await nextTurnOfTheLoop();
      const batch = this.waiting.slice(0, BATCH_LIMIT);
      this.waiting = this.waiting.slice(BATCH_LIMIT);
      await this.inTurn(() => this.record(batch));
    }
    this.draining = undefined;
  }

  /** Answers every asking of the batch, or tells its caller what to do; never fails itself. */
  private async record(batch: readonly Waiting[]): Promise<void> {
    try {
      const decided = await this.commit(batch);
      for (const [index, verdict] of decided.verdicts.entries()) tell(batch[index], verdict);
    } catch (error) {
      await this.afterFailure(batch, error);
    }
  }

  private async commit(batch: readonly Waiting[]): Promise<Decided> {
    try {
      return await this.decideAndCommit(batch, false);
    } catch (error) {
      if (!(error instanceof KeyTaken)) throw error;
      return this.decideAndCommit(batch, true);
    }
  }

  private async decideAndCommit(batch: readonly Waiting[], careful: boolean): Promise<Decided> {
    const { ledger, store } = this.parts;
    const tenure = await this.standing();
    const recordedAt = this.now(tenure);

    const ground = { ledger, tenure, recordedAt, states: this.states, store };
    const decided = await decideBatch(batch, ground, careful);
    if (decided.events.length === 0) return decided;

    await store.commit({ tenure, events: written(decided.events), keys: decided.keys });
    for (const [stream, held] of decided.changed) this.states.set(stream, held);
    this.tenure = { epoch: tenure.epoch, head: tenure.head + decided.events.length, recordedAt };
    this.committed.next(decided.events);
    this.heard.next(this.tenure.head);
    return decided;
  }

  private async standing(): Promise<Tenure> {
    if (this.ended instanceof WriterSuperseded) throw this.ended;

    this.tenure ??= await this.parts.store.standing(this.epoch);
    return this.tenure;
  }

  /** The clock, but never before what was recorded last. */
  private now({ recordedAt }: Tenure): string {
    const now = new Date(this.parts.clock()).toISOString();
    return now < recordedAt ? recordedAt : now;
  }

  /** After any failure, what is in memory may not be what is on disk. */
  private lost(error: unknown): void {
    this.tenure = undefined;
    this.states.clear();
    if (error instanceof WriterSuperseded) this.ended = error;
  }

  /** One asking that cannot be committed must not keep its neighbours from it: each is tried alone. */
  private async afterFailure(batch: readonly Waiting[], error: unknown): Promise<void> {
    this.lost(error);
    if (batch.length > 1 && !(error instanceof WriterSuperseded) && !(error instanceof CommitUncertain)) {
      for (const waiting of batch) await this.record([waiting]);
      return;
    }
    const fault = faultOf(error);
    for (const waiting of batch) waiting.fail(fault);
  }
}

const faultOf = (error: unknown): Fault => {
  if (error instanceof Fault) return error;
  return new CommitFailed(error, error instanceof CommitUncertain ? 'send-again-to-learn' : 'send-again');
};

const tell = (waiting: Waiting | undefined, verdict: Verdict): void => {
  switch (verdict.is) {
    case 'recorded':
      return waiting?.answer({ ok: true, events: verdict.events, repeated: false });
    case 'repeated':
      return waiting?.answer({ ok: true, events: verdict.events, repeated: true });
    case 'rejected':
      return waiting?.answer({ ok: false, rejection: verdict.rejection });
    case 'failed':
      return waiting?.fail(verdict.error);
  }
};

const nextTurnOfTheLoop = (): Promise<void> => new Promise((go) => setImmediate(go));
