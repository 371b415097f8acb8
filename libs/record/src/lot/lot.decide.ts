import { accept, assertNever, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { LotCommand } from './lot.commands';
import type { LotEvent, LotReceived, RecordedLotEvent } from './lot.events';
import { unknownLot } from './lot.state';
import type { Lot } from './lot.state';

/** Listed in order of precedence. */
export type LotRejection =
  | { readonly code: 'lot-kind-unknown'; readonly kind: string }
  | { readonly code: 'lot-already-received'; readonly lot: string }
  | { readonly code: 'lot-unknown'; readonly lot: string }
  | { readonly code: 'lot-not-quarantined'; readonly lot: string };

/** A rulebook that lists no kinds takes any. */
export type LotFacts = { readonly lotKinds: ReadonlySet<string> };

type LotDecision = Decision<LotEvent, LotRejection>;

export const decide = (command: LotCommand, lot: Lot, facts: LotFacts): LotDecision => {
  switch (command.type) {
    case 'ReceiveLot':
      return receiveLot(command.data, lot, facts);
    case 'ReceiveLotUnlessKnown':
      return lot.kind === null ? receiveLot(command.data, lot, facts) : accept();
    case 'QuarantineLot':
      return quarantineLot(command.data, lot);
    case 'ReleaseLot':
      return releaseLot(command.data, lot);
    default:
      return assertNever(command);
  }
};

/** A lot that was only mounted so far gets its certificate with its first receipt that has one. */
const receiveLot = (data: LotReceived['data'], lot: Lot, { lotKinds }: LotFacts): LotDecision => {
  if (lotKinds.size > 0 && !lotKinds.has(data.kind)) {
    return reject({ code: 'lot-kind-unknown', kind: data.kind });
  }
  const isFirst = lot.kind === null || (lot.kind === data.kind && lot.properties.length === 0);
  if (!isFirst) return reject({ code: 'lot-already-received', lot: data.lot });

  return accept({ type: 'LotReceived', data });
};

const quarantineLot = (
  data: Extract<LotCommand, { readonly type: 'QuarantineLot' }>['data'],
  lot: Lot,
): LotDecision => {
  if (lot.kind === null) return reject({ code: 'lot-unknown', lot: data.lot });
  if (lot.quarantined) return accept();

  return accept({ type: 'LotQuarantined', data });
};

const releaseLot = (
  data: Extract<LotCommand, { readonly type: 'ReleaseLot' }>['data'],
  lot: Lot,
): LotDecision => {
  if (lot.kind === null) return reject({ code: 'lot-unknown', lot: data.lot });
  if (!lot.quarantined) return reject({ code: 'lot-not-quarantined', lot: data.lot });

  return accept({ type: 'LotReleased', data });
};

export const evolve = (lot: Lot, event: RecordedLotEvent): Lot => {
  switch (event.type) {
    case 'LotReceived': {
      const { kind, properties, usableUntil } = event.data;
      return { ...lot, kind, properties, usableUntil };
    }
    case 'LotQuarantined':
      return { ...lot, quarantined: true };
    case 'LotReleased':
      return { ...lot, quarantined: false };
    default:
      return assertNever(event);
  }
};

export const LOT: StreamKind<LotCommand, Lot, LotEvent, LotRejection, LotFacts> = {
  name: 'lot',
  initial: unknownLot,
  decide,
  evolve,
};
