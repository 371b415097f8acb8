import type { Envelope, ReadStream } from '@libs/kernel';
import type { AnyPart, Asking, Rejection } from '../port';
import { assertRecordable, envelopeAt, typedAs } from './envelope';
import type { Place } from './envelope';
import type { Held } from './states';

/** What there is to say to one asking, once the batch it stood in is on disk. */
export type Verdict =
  | { readonly is: 'recorded'; readonly events: readonly Envelope[] }
  /** The key was answered before: in the log from `first` on, or earlier in this batch. */
  | { readonly is: 'repeated'; readonly events: readonly Envelope[] }
  | { readonly is: 'rejected'; readonly rejection: Rejection }
  | { readonly is: 'failed'; readonly error: unknown };

/** How a stream that is not at hand can be folded once its events are loaded. */
export type Folding = Pick<AnyPart, 'initial' | 'evolve'>;

/** Where a batch starts from. */
export type Ground = {
  readonly ledger: string;
  readonly head: number;
  readonly recordedAt: string;
  readonly held: (stream: string) => Held | undefined;
};

type Draft = { readonly events: Envelope[]; readonly changed: Map<string, Held> };

/** One batch being decided: each asking sees what those before it in the batch lead to. */
export class Stage {
  readonly events: Envelope[] = [];
  readonly changed = new Map<string, Held>();
  /** Streams that were needed and not at hand. While there are any, nothing that is decided counts. */
  readonly missing = new Map<string, Folding>();

  constructor(private readonly ground: Ground) {}

  /** Undefined when a stream it needs is not at hand. */
  decide(asking: Asking): Verdict | undefined {
    const verdict = orFailed(() => this.decideParts(asking));
    if (this.missing.size === 0) return verdict;
    // A part that is rejected on what is missing would hide what the parts after it need.
    this.gather(asking);
    return undefined;
  }

  /** Learns what an asking needs without deciding it. */
  gather(asking: Asking): void {
    const draft: Draft = { events: [], changed: new Map() };
    for (const part of asking.parts) {
      this.find(part.stream, part, draft);
      // On a stream still missing it may fail; it is asked again once that is loaded, and then heard.
      orFailed(() => {
        part.gather(this.readerFor(draft), asking.meta);
        return { is: 'recorded', events: [] };
      });
    }
  }

  private decideParts(asking: Asking): Verdict {
    const draft: Draft = { events: [], changed: new Map() };
    for (const part of asking.parts) {
      const rejection = this.decidePart(part, asking, draft);
      if (rejection !== undefined) return { is: 'rejected', rejection };
    }
    // On initial states where a miss was read, the answer means nothing: the caller decides it anew.
    if (this.missing.size === 0) {
      for (const event of draft.events) this.events.push(event);
      for (const [stream, held] of draft.changed) this.changed.set(stream, held);
    }
    return { is: 'recorded', events: draft.events };
  }

  private decidePart(part: AnyPart, asking: Asking, draft: Draft): Rejection | undefined {
    const held = this.find(part.stream, part, draft) ?? { state: part.initial, version: 0 };
    const decision = part.decide(held.state, this.readerFor(draft), asking.meta);
    if (!decision.ok) return decision.rejection;

    let { state, version } = held;
    for (const event of decision.events) {
      version += 1;
      const envelope = envelopeAt(this.placeAfter(draft, part.stream, version), asking.meta, event);
      assertRecordable(envelope);
      state = part.evolve(state, typedAs(envelope, event.type));
      draft.events.push(envelope);
    }
    if (version > held.version) draft.changed.set(part.stream, { state, version });
    return undefined;
  }

  private placeAfter(draft: Draft, stream: string, version: number): Place {
    const { ledger, head, recordedAt } = this.ground;
    const keyIndex = draft.events.length;
    return {
      ledger,
      position: head + this.events.length + keyIndex + 1,
      stream,
      version,
      recordedAt,
      keyIndex,
    };
  }

  private find(stream: string, folding: Folding, draft: Draft): Held | undefined {
    const held = draft.changed.get(stream) ?? this.changed.get(stream) ?? this.ground.held(stream);
    if (held === undefined) this.missing.set(stream, folding);
    return held;
  }

  private readerFor(draft: Draft): ReadStream {
    return (kind, id) => {
      const held = this.find(`${kind.name}/${id}`, foldingOf(kind), draft);
      return held === undefined ? kind.initial : known(held.state);
    };
  }
}

/** A programmer's mistake in one asking must not take its neighbours in the batch down: its own caller hears of it. */
const orFailed = (decide: () => Verdict): Verdict => {
  try {
    return decide();
  } catch (error) {
    return { is: 'failed', error };
  }
};

/** One folding a kind, not one a read: reads are the hot path. */
const foldings = new WeakMap<object, Folding>();

const foldingOf = <S>(kind: {
  readonly initial: S;
  readonly evolve: (state: S, event: never) => S;
}): Folding => {
  const folding = foldings.get(kind) ?? {
    initial: kind.initial,
    evolve: (state: unknown, event: unknown) => kind.evolve(known<S>(state), known<never>(event)),
  };
  foldings.set(kind, folding);
  return folding;
};

/** What is held under a stream's name was put there by that stream's own kind. */
const known = <T>(value: unknown): T => value as T;
