import { eventSays } from '@libs/contracts';
import type { Envelope, Json, JsonObject } from '@libs/kernel';
import { isSealed, typeOf } from '@libs/ledger';
import type { Names } from '../names';
import { eventId, uuidOf } from '../questions/event-identity';
import type { Notice, Wants } from './subscription';

/** CloudEvents 1.0, JSON format: the attributes this feed uses. Extension names have letters and digits only. */
export type CloudEvent = {
  readonly specversion: '1.0';
  readonly id: string;
  readonly source: string;
  readonly type: string;
  readonly subject: string;
  readonly time: string;
  readonly datacontenttype: 'application/json';
  /** Sorts as text. */
  readonly sequence: string;
  readonly recordedtime?: string;
  readonly data: JsonObject;
};

/** Whose events say who somebody is, whatever is left out of them. */
const PERSONAL_STREAMS: ReadonlySet<string> = new Set(['person', 'account']);
/** Fields that name somebody, and free text. What is sealed is left out wherever it stands. */
const PERSONAL_FIELDS: ReadonlySet<string> = new Set([
  ...['note', 'words', 'because', 'approval', 'reason_text', 'lookedAtBy'],
  ...['person', 'account', 'retailer', 'hauler', 'installer', 'signedBy', 'verifiedBy'],
]);

/** Larger than this, an event goes without its fields: whoever wants them asks by its position. */
const LARGEST_DATA = 128 * 1024;

export const mayLeave = ({ stream }: Pick<Envelope, 'stream'>): boolean =>
  !PERSONAL_STREAMS.has(stream.slice(0, stream.indexOf('/')));

export const isWanted = (wants: Wants, event: Envelope): boolean =>
  mayLeave(event) && (wants.events === 'all' || wants.events.includes(typeOf(event.schema)));

export const isNoticeWanted = (wants: Wants, { kind }: Notice): boolean =>
  ({ alarm: wants.alarms, checkpoint: wants.checkpoints, clock: wants.clocks })[kind];

/** The event's own fields without anything that says who a person is; null where nothing of it is left. */
const impersonal = (value: Json): Json | undefined => {
  if (typeof value === 'string') return isSealed(value) ? undefined : value;
  if (Array.isArray(value)) return value.map(impersonal).filter((one) => one !== undefined);
  if (typeof value !== 'object' || value === null) return value;
  const kept: { [field: string]: Json } = {};
  for (const [field, inner] of Object.entries(value)) {
    const plain = PERSONAL_FIELDS.has(field) || inner === undefined ? undefined : impersonal(inner);
    if (plain !== undefined) kept[field] = plain;
  }
  return kept;
};

const padded = (number: number): string => String(number).padStart(20, '0');
const subjectOf = (stream: string): string => stream.slice(stream.indexOf('/') + 1);
export const sourceOf = (ledger: string): string => `urn:uuid:${ledger}`;

/** One event of the ledger as others read it: its id is the one that packets and exports have. */
export const eventAsCloudEvent = (event: Envelope, names: Names): CloudEvent => {
  const type = typeOf(event.schema);
  const fields = impersonal(event.data) ?? {};
  const isLarge = JSON.stringify(fields).length > LARGEST_DATA;
  return {
    specversion: '1.0',
    id: eventId(event.ledger, event.position),
    source: sourceOf(event.ledger),
    type: `studbook.record.${type}.v${event.schema.slice(event.schema.indexOf('/') + 1)}`,
    subject: subjectOf(event.stream),
    time: event.occurredAt,
    datacontenttype: 'application/json',
    sequence: padded(event.position),
    recordedtime: event.recordedAt,
    data: {
      position: event.position,
      stream: event.stream,
      version: event.version,
      station: event.station,
      revision: event.revision,
      corrects: event.corrects ?? null,
      says: { ...eventSays(type, event.data, names) },
      ...(isLarge ? { fieldsLeftOut: true } : { fields }),
    },
  };
};

export const NOTICE_TYPES = {
  alarm: 'studbook.alarm.opened.v1',
  checkpoint: 'studbook.checkpoint.made.v1',
  clock: 'studbook.clock.near.v1',
} as const satisfies Record<Notice['kind'], string>;

export const noticeAsCloudEvent = (notice: Notice, ledger: string): CloudEvent => ({
  specversion: '1.0',
  id: notice.id,
  source: sourceOf(ledger),
  type: NOTICE_TYPES[notice.kind],
  subject: notice.subject,
  time: notice.at,
  datacontenttype: 'application/json',
  sequence: padded(notice.seq),
  // Written by this feed itself.
  data: JSON.parse(notice.data) as JsonObject,
});

/** The same news, noticed twice or by two servers, is one. */
export const noticeId = (ledger: string, ...about: readonly string[]): string =>
  uuidOf(ledger, about.join('\n'));

/** What a test sends: it says nothing of the plant. */
export const testCloudEvent = (ledger: string, id: string, at: string): CloudEvent => ({
  specversion: '1.0',
  id,
  source: sourceOf(ledger),
  type: 'studbook.test.v1',
  subject: 'test',
  time: at,
  datacontenttype: 'application/json',
  sequence: padded(0),
  data: { says: { en: 'A test from Studbook.', es: 'Una prueba de Studbook.' } },
});
