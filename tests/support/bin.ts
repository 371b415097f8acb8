import type { Envelope, Recorded, ReadStream, StreamKind, Meta, Decision } from '@libs/kernel';
import { accept, reject } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { AnyPart, Asking } from '@libs/ledger';

/** The smallest kind of stream that can decide, refuse, and read another: a bin of parts that never goes below zero. */
export type BinEvent =
  | { readonly type: 'PartsPut'; readonly data: { readonly count: number; readonly note?: string } }
  | { readonly type: 'PartsTaken'; readonly data: { readonly count: number } };

export type BinCommand =
  | { readonly type: 'Put'; readonly count: number; readonly note?: string }
  | { readonly type: 'Take'; readonly count: number }
  /** Takes only while the other bin, read as a fact, holds something. */
  | { readonly type: 'TakeWhileOther'; readonly count: number }
  | { readonly type: 'LookOnly' };

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
      case 'LookOnly':
        return accept();
    }
  },
  evolve: (left, event: Recorded<BinEvent>) =>
    event.type === 'PartsPut' ? left + event.data.count : left - event.data.count,
};

const take = (count: number, left: number): BinDecision =>
  count > left
    ? reject({ code: 'too-few', left })
    : accept<BinEvent>({ type: 'PartsTaken', data: { count } });

/** A part of an asking on one bin; `other` names the bin whose count is read as a fact. */
export const onBin = (id: string, command: BinCommand, other?: string): AnyPart =>
  partOf({
    kind: bin,
    id,
    command,
    facts: (read: ReadStream) => ({ other: other === undefined ? 0 : read(bin, other) }),
  });

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

export const asking = (key: string, ...parts: readonly AnyPart[]): Asking => ({
  parts,
  meta: metaFor(key),
  content: JSON.stringify(parts.map(({ stream }) => stream)),
});

export const positionsOf = (events: readonly Envelope[]): readonly number[] =>
  events.map(({ position }) => position);
