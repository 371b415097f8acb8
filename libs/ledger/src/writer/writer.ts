import type { Envelope } from '@libs/kernel';
import { Subject } from 'rxjs';
import type { Observable } from 'rxjs';
import { CommitFailed, Fault, LedgerClosed, TooManyWaiting, WriterSuperseded } from '../fault';
import type { Asking, Outcome, Sql } from '../port';
import { decideBatch } from './batch';
import type { BatchGround, Decided } from './batch';
import { digestOf } from './digest';
import { written } from './envelope';
import { CommitUncertain, KeyTaken } from './log-store';
import type { LogStore, Tenure, Written } from './log-store';
import { BATCH_LIMIT, WAITING_LIMIT, WORTH_HALVING } from './queue';
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

/** A batch that has only to be committed. */
type Ready = {
  readonly batch: readonly Waiting[];
  readonly decided: Decided;
  readonly written: Written;
  readonly tenure: Tenure;
  readonly after: Tenure;
};

/** `landed` resolves, to what went wrong if anything did. */
type Flight = Ready & { readonly landed: Promise<{ readonly error: unknown } | undefined> };

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
  /** The batch on its way to disk. */
  private flight: Flight | undefined;
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
    return this.inTurn(async () => {
      await this.land();
      return this.parts.store.transaction(this.epoch, work);
    });
  }

  /** What fails here fails the next commit too, and is heard there: until then the lease has time left. */
  async renew(): Promise<void> {
    await this.inTurn(async () => {
      await this.land();
      await this.parts.store.renew(this.epoch);
    }).catch((error: unknown) => {
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
    while (this.waiting.length > 0 || this.flight !== undefined) {
      // Those just answered get to ask again first, so that they share the next commit.
      await nextTurnOfTheLoop();
      const batch = this.takeBatch();
      await this.inTurn<unknown>(() => (batch.length > 0 ? this.record(batch) : this.land()));
    }
    this.draining = undefined;
  }

  /** With nothing under way, half of many: they are then on their way to disk while the others are decided. */
  private takeBatch(): readonly Waiting[] {
    const { length } = this.waiting;
    const many = this.flight === undefined && length >= WORTH_HALVING ? Math.ceil(length / 2) : length;
    return this.waiting.splice(0, Math.min(many, BATCH_LIMIT));
  }

  /**
   * Decides a batch on top of the one on its way to disk, and sends it after that as soon as it has landed. When that
   * one does not land, all that was decided on top of it is dropped and decided anew. Answers every asking, or tells
   * its caller what to do; never fails itself.
   */
  private async record(batch: readonly Waiting[]): Promise<void> {
    const ready = await this.readied(batch, false).catch((error: unknown) => ({ error }));
    if (!(await this.land())) return this.record(batch);
    if ('error' in ready) return this.afterFailure(batch, ready.error);

    const landed = this.commit(ready).then(
      () => undefined,
      (error: unknown) => ({ error }),
    );
    this.flight = { ...ready, landed };
  }

  /** Waits for the batch on its way; false when it did not get there, and has been seen to. */
  private async land(): Promise<boolean> {
    const failure = await this.flight?.landed;
    const batch = this.flight?.batch ?? [];
    this.flight = undefined;
    if (failure === undefined) return true;

    if (failure.error instanceof KeyTaken) await this.recordNow(batch, true);
    else await this.afterFailure(batch, failure.error);
    return false;
  }

  /** With nothing under way before or after it. */
  private async recordNow(batch: readonly Waiting[], careful: boolean): Promise<void> {
    try {
      await this.commit(await this.readied(batch, careful));
    } catch (error) {
      if (error instanceof KeyTaken && !careful) await this.recordNow(batch, true);
      else await this.afterFailure(batch, error);
    }
  }

  /** Decided, hashed and spelt out: all that can be done before the disk is needed. */
  private async readied(batch: readonly Waiting[], careful: boolean): Promise<Ready> {
    const { ledger } = this.parts;
    const { flight } = this;
    const tenure = flight?.after ?? (await this.standing());
    const recordedAt = this.now(tenure);

    const ground = { ledger, tenure, recordedAt, ...this.groundOn(flight) };
    const decided = await decideBatch(batch, ground, careful);
    const after = { epoch: tenure.epoch, head: tenure.head + decided.events.length, recordedAt };
    return { batch, decided, written: written(decided.events), tenure, after };
  }

  /** What it changes is known; what it does not is read once it is there: a store is asked one thing at a time. */
  private groundOn(flight: Flight | undefined): Pick<BatchGround, 'states' | 'store'> {
    const { states } = this;
    const { store } = this.parts;
    if (flight === undefined) return { states, store };

    const { changed } = flight.decided;
    return {
      states: { ...states, get: (stream) => changed.get(stream) ?? states.get(stream) },
      store: {
        answered: (...asked) => flight.landed.then(() => store.answered(...asked)),
        events: (...asked) => flight.landed.then(() => store.events(...asked)),
        replay: (...asked) => flight.landed.then(() => store.replay(...asked)),
      },
    };
  }

  private async commit({ batch, decided, written, tenure, after }: Ready): Promise<void> {
    const { events, keys, changed, verdicts } = decided;
    if (events.length > 0) {
      await this.parts.store.commit({ tenure, events: written, keys });
      for (const [stream, held] of changed) this.states.set(stream, held);
      this.tenure = after;
      this.committed.next(events);
      this.heard.next(after.head);
    }
    for (const [index, verdict] of verdicts.entries()) tell(batch[index], verdict);
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
      for (const waiting of batch) await this.recordNow([waiting], false);
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
