import type { PacketEvent, PacketFile, PacketHome } from '../packet-home';
import type { EpcisEvent } from './epcis-event';
import type { Identifiers } from './identifiers';
import { identifiersUnder, PLANT_BASE } from './identifiers';
import { epcisEventsOf } from './mapping';

/** EPCIS 2.0 (ISO/IEC 19987) in JSON-LD: the whole history as an EPCISDocument. */
export const epcisFile = (home: PacketHome, base: string = PLANT_BASE): PacketFile => ({
  name: 'history.epcis.json',
  bytes: Buffer.from(`${JSON.stringify(epcisDocument(home, base), null, 1)}\n`, 'utf8'),
});

const CONTEXT = 'https://ref.gs1.org/standards/epcis/epcis-context.jsonld';

type Place = { readonly id: string };
type Written = EpcisEvent & {
  readonly eventID: string;
  readonly eventTime: string;
  readonly recordTime: string;
  readonly eventTimeZoneOffset: string;
  readonly readPoint?: Place;
  readonly bizLocation: Place;
  readonly errorDeclaration?: object;
};

export const epcisDocument = (home: PacketHome, base: string): object => {
  const ids = identifiersUnder(base);
  const written = new Map<number, readonly Written[]>();
  const list = home.events.flatMap((one) => {
    const own = epcisEventsOf({ home, ids, one }).map((event, n) => writtenOf(one, event, { ids, n }));
    written.set(one.event.position, own);
    return own;
  });
  const declared = home.events.flatMap((one) => declarations(one, written));
  return {
    '@context': [CONTEXT, { plant: ids.vocabulary }],
    id: ids.document('history', home.home),
    type: 'EPCISDocument',
    schemaVersion: '2.0',
    creationDate: home.asOf,
    epcisBody: { eventList: [...list, ...declared] },
  };
};

const writtenOf = (
  one: PacketEvent,
  event: EpcisEvent,
  { ids, n }: { readonly ids: Identifiers; readonly n: number },
): Written => ({
  ...event,
  eventID: `urn:uuid:${n === 0 ? one.id : besides(one.id, n)}`,
  eventTime: new Date(one.event.occurredAt).toISOString(),
  recordTime: one.event.recordedAt,
  eventTimeZoneOffset: offsetOf(one.event.occurredAt),
  ...(one.event.station === null ? {} : { readPoint: { id: ids.station(one.event.station) } }),
  bizLocation: { id: ids.plant },
  'plant:event': one.type,
  'plant:position': one.event.position,
  ...(typeof one.event.data['operation'] === 'string'
    ? { 'plant:operation': one.event.data['operation'] }
    : {}),
  ...(one.event.station === null ? {} : { 'plant:station': one.event.station }),
  'plant:by': one.by,
  'plant:says': one.says.en,
});

/** A second event from one entry: its id counts on from the entry's, so that it is the same whenever it is written. */
const besides = (id: string, n: number): string => {
  const last = (Number.parseInt(id.slice(-2), 16) + n) % 256;
  return `${id.slice(0, -2)}${last.toString(16).padStart(2, '0')}`;
};

/** `+00:00` for Zulu: EPCIS refuses the letter. */
const offsetOf = (instant: string): string => /[+-]\d{2}:\d{2}$/.exec(instant)?.[0] ?? '+00:00';

const TAKEN_BACK = 'WorkWithdrawn';

/**
 * What was put right stands twice, as the standard asks: the wrong event again in full under the same id, with a
 * declaration. Whoever drops doubles by id alone loses it.
 */
const declarations = (
  { event, type }: PacketEvent,
  written: ReadonlyMap<number, readonly Written[]>,
): readonly Written[] => {
  if (event.corrects === undefined) return [];
  const withdrawn = type === TAKEN_BACK;
  const corrective = (written.get(event.position) ?? []).slice(0, 1).map(({ eventID }) => eventID);
  return (written.get(event.corrects) ?? []).map((wrong) => ({
    ...wrong,
    errorDeclaration: {
      declarationTime: event.recordedAt,
      reason: withdrawn ? 'did_not_occur' : 'incorrect_data',
      ...(withdrawn || corrective.length === 0 ? {} : { correctiveEventIDs: corrective }),
    },
  }));
};
