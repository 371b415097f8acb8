import type { Decision, Envelope, Meta, ReadStream, Recorded, StreamKind } from '@libs/kernel';
import { accept, reject } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { AnyPart, Asking, Ledger, Outcome } from '@libs/ledger';

/** The smallest kind of stream that decides, refuses and reads another: a bin of parts that never holds less than none. */
export type BinEvent =
  | { readonly type: 'PartsPut'; readonly data: { readonly count: number; readonly note?: string } }
  | { readonly type: 'PartsTaken'; readonly data: { readonly count: number } };

export type BinCommand =
  | { readonly type: 'Put'; readonly count: number; readonly note?: string }
  | { readonly type: 'Take'; readonly count: number }
  /** Only while the other bin, read as a fact, holds something. */
  | { readonly type: 'TakeWhileOther'; readonly count: number }
  /** Answered, and nothing to record. */
  | { readonly type: 'Look' }
  /** A programmer's mistake. */
  | { readonly type: 'Stumble' };

export type BinRejection =
  { readonly code: 'too-few'; readonly left: number } | { readonly code: 'other-empty' };
export type BinFacts = { readonly other: number };

type BinDecision = Decision<BinEvent, BinRejection>;

export const bin: StreamKind<BinCommand, number, BinEvent, BinRejection, BinFacts> = {
  name: 'bin',
  initial: 0,
  decide: (command, left, facts): BinDecision => {
    switch (command.type) {
      case 'Put':
        return accept<BinEvent>({ type: 'PartsPut', data: { count: command.count, note: command.note } });
      case 'Take':
        return take(command.count, left);
      case 'TakeWhileOther':
        return facts.other > 0 ? take(command.count, left) : reject({ code: 'other-empty' });
      case 'Look':
        return accept();
      case 'Stumble':
        throw new Error('stumbled');
    }
  },
  evolve: (left, event: Recorded<BinEvent>) =>
    event.type === 'PartsPut' ? left + event.data.count : left - event.data.count,
};

const take = (count: number, left: number): BinDecision =>
  count > left
    ? reject({ code: 'too-few', left })
    : accept<BinEvent>({ type: 'PartsTaken', data: { count } });

/** A part, with the command kept beside it so that a test can say what was sent. */
export type BinPart = AnyPart & { readonly command: BinCommand };

/** A part of an asking on one bin; `other` names the bin whose count is read as a fact. */
export const onBin = (id: string, command: BinCommand, other?: string): BinPart => ({
  ...partOf({
    kind: bin,
    id,
    command,
    facts: (read: ReadStream) => ({ other: other === undefined ? 0 : read(bin, other) }),
  }),
  command,
});

export const put = (id: string, count = 1, note?: string): BinPart => onBin(id, { type: 'Put', count, note });
export const takeFrom = (id: string, count = 1): BinPart => onBin(id, { type: 'Take', count });

export const metaFor = (key: string): Meta => ({
  key,
  actor: 'person-1',
  assurance: 'pin',
  occurredAt: '2026-03-02T07:30:00.000-06:00',
  device: 'tablet-1',
  deviceSeq: 1,
  skewMs: 0,
  via: 'tablet',
  station: 'floor',
});

/** What was sent: here the streams and what is to be done there. */
const contentOf = (parts: readonly BinPart[]): string =>
  JSON.stringify(parts.map(({ stream, command }) => [stream, command]));

export const asking = (key: string, ...parts: readonly BinPart[]): Asking => ({
  parts,
  meta: metaFor(key),
  content: contentOf(parts),
});

export const askedOf = (ledger: Ledger, key: string, ...parts: readonly BinPart[]): Promise<Outcome> =>
  ledger.ask(asking(key, ...parts));

export const eventsOf = (outcome: Outcome): readonly Envelope[] => {
  if (!outcome.ok) throw new Error(`Rejected: ${outcome.rejection.code}`);
  return outcome.events;
};

export const positionsOf = (events: readonly Envelope[]): readonly number[] =>
  events.map(({ position }) => position);
