import type { Envelope, ReadStream } from '@libs/kernel';
import type { AnyPart, Asking, Rejection } from '../port';
import { assertRecordable, envelopeAt, typedAs } from './envelope';
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

/** One batch being decided: each asking sees what those before it in the batch lead to. */
export type Stage = {
  /** Undefined when a stream it needs is not at hand: see `missing`. */
  readonly decide: (asking: Asking) => Verdict | undefined;
  /** Learns what an asking needs without deciding it. */
  readonly gather: (asking: Asking) => void;
  readonly missing: ReadonlyMap<string, Folding>;
  readonly events: readonly Envelope[];
  readonly changed: ReadonlyMap<string, Held>;
};

type Draft = { readonly events: Envelope[]; readonly changed: Map<string, Held> };

export const stageOn = (ground: Ground): Stage => {
  const events: Envelope[] = [];
  const changed = new Map<string, Held>();
  const missing = new Map<string, Folding>();

  const find = (stream: string, folding: Folding, draft: Draft): Held | undefined => {
    const held = draft.changed.get(stream) ?? changed.get(stream) ?? ground.held(stream);
    if (held === undefined) missing.set(stream, folding);
    return held;
  };

  const readerFor =
    (draft: Draft): ReadStream =>
    (kind, id) => {
      const held = find(`${kind.name}/${id}`, foldingOf(kind), draft);
      return held === undefined ? kind.initial : known(held.state);
    };

  const decidePart = (part: AnyPart, asking: Asking, draft: Draft): Rejection | undefined => {
    const held = find(part.stream, part, draft) ?? { state: part.initial, version: 0 };
    const decision = part.decide(held.state, readerFor(draft), asking.meta);
    if (!decision.ok) return decision.rejection;

    let { state, version } = held;
    for (const event of decision.events) {
      version += 1;
      const position = ground.head + events.length + draft.events.length + 1;
      const place = {
        ledger: ground.ledger,
        position,
        stream: part.stream,
        version,
        recordedAt: ground.recordedAt,
      };
      const envelope = envelopeAt({ ...place, keyIndex: draft.events.length }, asking.meta, event);
      assertRecordable(envelope);
      state = part.evolve(state, typedAs(envelope, event.type));
      draft.events.push(envelope);
    }
    if (version > held.version) draft.changed.set(part.stream, { state, version });
    return undefined;
  };

  const decideParts = (asking: Asking): Verdict => {
    const draft: Draft = { events: [], changed: new Map() };
    for (const part of asking.parts) {
      const rejection = decidePart(part, asking, draft);
      if (rejection !== undefined) return { is: 'rejected', rejection };
    }
    // On initial states where a miss was read, the answer means nothing: the caller decides it anew.
    if (missing.size === 0) {
      for (const event of draft.events) events.push(event);
      for (const [stream, held] of draft.changed) changed.set(stream, held);
    }
    return { is: 'recorded', events: draft.events };
  };

  const decide = (asking: Asking): Verdict | undefined => {
    const verdict = orFailed(() => decideParts(asking));
    return missing.size > 0 ? undefined : verdict;
  };

  const gather = (asking: Asking): void => {
    const draft: Draft = { events: [], changed: new Map() };
    for (const part of asking.parts) {
      find(part.stream, part, draft);
      // On a stream still missing it may fail; it is asked again once that is loaded, and then heard.
      orFailed(() => {
        part.gather(readerFor(draft), asking.meta);
        return { is: 'recorded', events: [] };
      });
    }
  };

  return { decide, gather, missing, events, changed };
};

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
