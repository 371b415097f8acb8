import type { RecordedUnitEvent, UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';

/** What the state will be once this event stands, for what follows it in the same command. */
export const asRecorded = (event: UnitEvent, facts: UnitFacts): RecordedUnitEvent => {
  const envelope = {
    schema: `${event.type}/1`,
    ledger: '',
    position: 0,
    stream: '',
    version: 0,
    occurredAt: facts.occurredAt,
    recordedAt: facts.receivedAt,
    actor: facts.signer.actor,
    assurance: 'pin',
    device: null,
    deviceSeq: null,
    skewMs: null,
    via: 'tablet',
    station: facts.station,
    key: facts.idBase,
    keyIndex: 0,
    revision: event.revision ?? null,
    planDigest: event.planDigest ?? null,
  } as const;
  return withType(envelope, event);
};

/** Each member of the union keeps its own data; the compiler cannot follow that through a spread. */
const withType = (envelope: object, event: UnitEvent): RecordedUnitEvent =>
  ({ ...envelope, type: event.type, data: event.data }) as RecordedUnitEvent;
