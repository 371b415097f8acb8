import { accept, assertNever, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { StationCommand } from './station.commands';
import type { RecordedStationEvent, StationEvent } from './station.events';
import { emptyStation } from './station.state';
import type { Station } from './station.state';

/** Listed in order of precedence. */
export type StationRejection =
  | { readonly code: 'station-unknown'; readonly station: string }
  | { readonly code: 'lot-kind-unknown'; readonly kind: string }
  | { readonly code: 'lot-of-other-kind'; readonly lot: string; readonly kind: string }
  | { readonly code: 'lot-not-usable'; readonly lot: string }
  | { readonly code: 'lot-not-mounted'; readonly lot: string }
  | { readonly code: 'reason-unknown'; readonly reason: string }
  | { readonly code: 'hold-unknown'; readonly hold: string }
  | { readonly code: 'not-allowed'; readonly actor: string; readonly needs: string };

export type StationFacts = {
  /** Of the rulebook in force. A rulebook that lists none takes any. */
  readonly stations: ReadonlySet<string>;
  readonly lotKinds: ReadonlySet<string>;
  /** What the lot was received as; null: it is not known yet. */
  readonly receivedAs: string | null;
  /** Neither quarantined nor out of date today. */
  readonly usable: boolean;
  readonly reasons: ReadonlySet<string>;
  readonly actor: string;
  /** Of who sends, as far as the command needs them. */
  readonly roles: readonly string[];
};

type StationDecision = Decision<StationEvent, StationRejection>;

export const decide = (command: StationCommand, state: Station, facts: StationFacts): StationDecision => {
  switch (command.type) {
    case 'MountLot':
      return mountLot(command.data, state, facts);
    case 'UnmountLot':
      return unmountLot(command.data, state);
    case 'HoldStation':
      return holdStation(command.data, state, facts);
    case 'ReleaseStation':
      return releaseStation(command.data, state, facts);
    default:
      return assertNever(command);
  }
};

type Mounting = { readonly station: string; readonly lot: string; readonly kind: string };

/**
 * What is open at the station already need not be opened again. A lot in quarantine or past its day is not opened at
 * all: there is still time, and the pallet goes back.
 */
const mountLot = (data: Mounting, { mounted }: Station, facts: StationFacts): StationDecision => {
  const { station, lot, kind } = data;
  if (facts.stations.size > 0 && !facts.stations.has(station)) {
    return reject({ code: 'station-unknown', station });
  }
  if (facts.lotKinds.size > 0 && !facts.lotKinds.has(kind)) return reject({ code: 'lot-kind-unknown', kind });
  if (facts.receivedAs !== null && facts.receivedAs !== kind) {
    return reject({ code: 'lot-of-other-kind', lot, kind: facts.receivedAs });
  }
  const replaces = mounted[kind] ?? null;
  if (replaces === lot) return accept();
  if (!facts.usable) return reject({ code: 'lot-not-usable', lot });

  return accept({ type: 'LotMounted', data: { ...data, replaces, usable: facts.usable } });
};

const unmountLot = (
  { station, lot }: { readonly station: string; readonly lot: string },
  { mounted }: Station,
): StationDecision => {
  const kind = Object.keys(mounted).find((of) => mounted[of] === lot);
  return kind === undefined
    ? reject({ code: 'lot-not-mounted', lot })
    : accept({ type: 'LotUnmounted', data: { station, lot, kind } });
};

type Held = Extract<StationCommand, { readonly type: 'HoldStation' }>['data'];
type Released = Extract<StationCommand, { readonly type: 'ReleaseStation' }>['data'];

/** Holding a held station changes nothing, so it records nothing. */
const holdStation = (data: Held, { held }: Station, facts: StationFacts): StationDecision => {
  const { station, reason } = data;
  if (facts.stations.size > 0 && !facts.stations.has(station)) {
    return reject({ code: 'station-unknown', station });
  }
  if (facts.reasons.size > 0 && !facts.reasons.has(reason)) return reject({ code: 'reason-unknown', reason });

  return held === null ? accept({ type: 'StationHeld', data }) : accept();
};

const DECIDERS = ['quality-manager', 'inspector', 'agency-inspector', 'administrator'];

const releaseStation = (
  data: Released,
  { held }: Station,
  { actor, roles }: StationFacts,
): StationDecision => {
  if (held?.hold !== data.hold) return reject({ code: 'hold-unknown', hold: data.hold });

  return roles.some((role) => DECIDERS.includes(role))
    ? accept({ type: 'StationReleased', data })
    : reject({ code: 'not-allowed', actor, needs: 'quality-manager' });
};

export const evolve = (state: Station, event: RecordedStationEvent): Station => {
  const { mounted } = state;
  switch (event.type) {
    case 'LotMounted':
      return { ...state, mounted: { ...mounted, [event.data.kind]: event.data.lot } };
    case 'LotUnmounted': {
      const { [event.data.kind]: _gone, ...rest } = mounted;
      return { ...state, mounted: rest };
    }
    case 'StationHeld': {
      const { hold, reason } = event.data;
      return { ...state, held: { hold, reason, since: event.occurredAt } };
    }
    case 'StationReleased':
      return { ...state, held: null };
    default:
      return assertNever(event);
  }
};

export const STATION: StreamKind<StationCommand, Station, StationEvent, StationRejection, StationFacts> = {
  name: 'station',
  initial: emptyStation,
  decide,
  evolve,
};
