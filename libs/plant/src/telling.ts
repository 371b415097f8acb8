import type { Json, JsonObject, Meta, Via } from '@libs/kernel';
import { canonicalJson, elapsedMs } from '@libs/kernel';
import { partOf } from '@libs/ledger';
import type { AnyPart, Outcome, Rejection } from '@libs/ledger';
import type { UnitCommand } from '@libs/record';
import { kindOf, unitFacts } from './facts';
import type { UnitRef, Wanted } from './wanted';
import type { Sender, Told } from './told';
import type { Workings } from './workings';

/** What every request says of when and where, as the contract has it. */
export type When = {
  readonly occurredAt?: string | undefined;
  readonly device?: string | undefined;
  readonly deviceSeq?: number | undefined;
  readonly skewMs?: number | undefined;
  readonly via: Via;
  readonly station?: string | undefined;
};

/** A request on its way in: what was sent, by whom, and when it got here. */
export type Arrival<B extends When = When> = {
  readonly route: string;
  readonly body: B;
  readonly sender: Sender;
  readonly params: { readonly [name: string]: string };
  readonly receivedAt: string;
};

export const arrivalOf = <B extends When>(
  { clock }: Workings,
  sent: Omit<Arrival<B>, 'receivedAt' | 'params'> & Partial<Pick<Arrival, 'params'>>,
): Arrival<B> => ({ params: {}, ...sent, receivedAt: new Date(clock()).toISOString() });

export const metaOf = ({ body, sender, receivedAt }: Arrival): Meta => ({
  key: sender.key,
  actor: sender.actor,
  assurance: sender.assurance,
  occurredAt: body.occurredAt ?? receivedAt,
  device: sender.tablet ?? body.device ?? null,
  deviceSeq: body.deviceSeq ?? null,
  skewMs: body.skewMs ?? null,
  via: body.via,
  station: body.station ?? null,
  ...(sender.signature === undefined ? {} : { signature: sender.signature }),
});

/** What every decision wants to know of a request. */
export const arrived = ({ receivedAt, sender }: Arrival): Pick<Wanted, 'receivedAt' | 'senderRoles'> => ({
  receivedAt,
  senderRoles: sender.roles ?? [],
});

/** What was sent, whole: the same key with anything else in it is an error. */
const contentOf = ({ route, body, params }: Arrival): string =>
  canonicalJson({ route, params, body: jsonOf(body) });

/** A parsed request is JSON; a member that was left out is absent. */
const jsonOf = (body: object): JsonObject => Object.fromEntries(Object.entries(body).map(asJson));
const asJson = ([name, value]: [string, Json | undefined]): [string, Json | undefined] => [name, value];

export const unitPart = ({ plans }: Workings, ref: UnitRef, command: UnitCommand, wanted: Wanted): AnyPart =>
  partOf({ kind: kindOf(ref), id: ref.serial, command, facts: unitFacts(plans, ref, wanted) });

export const askLedger = (
  { ledger }: Workings,
  arrival: Arrival,
  parts: readonly AnyPart[],
): Promise<Outcome> => {
  const meta = metaOf(arrival);
  return isYetToCome(meta, arrival.receivedAt)
    ? Promise.resolve({ ok: false, rejection: { code: 'happens-later', occurredAt: meta.occurredAt } })
    : ledger.ask({ parts, meta, content: contentOf(arrival) });
};

/** As far ahead as the clock of a tablet that nobody looks after is believed to be. From memory, no published source. */
const CLOCK_AHEAD_MS = 15 * 60_000;

/** An entry of the past is late, however old. One of the future is told by a clock that is wrong. */
const isYetToCome = ({ occurredAt, skewMs }: Meta, receivedAt: string): boolean =>
  elapsedMs(receivedAt, occurredAt) - Math.max(0, skewMs ?? 0) > CLOCK_AHEAD_MS;

export const sealedNote = (
  { sealing }: Workings,
  { body, sender }: Arrival<When & { readonly note?: string | undefined }>,
  ref: StreamRef,
): { readonly note?: string } =>
  body.note === undefined
    ? {}
    : { note: sealing.seal(sender.actor, { stream: `${ref.kind}/${ref.serial}`, field: 'note' }, body.note) };

/** A stream by its kind and id. */
type StreamRef = { readonly kind: string; readonly serial: string };

/** Free text of a field that must be there, sealed where it will stand. */
export const sealedText = (
  { sealing }: Workings,
  { sender }: Arrival,
  { ref, field, text }: { readonly ref: StreamRef; readonly field: string; readonly text: string },
): string =>
  sealing.seal(keyHolder(ref, field, sender.actor), { stream: `${ref.kind}/${ref.serial}`, field }, text);

/** 24 CFR 3282.417: determinations, their bases, and what was done on complaints stay with the home, for its life. */
const KEPT_FOR_THE_HOME: ReadonlySet<string> = new Set(['claim', 'determination']);

const COMPLAINANT = 'claim:';
/** The claim whose complainant this key belongs to. */
export const claimOfComplainant = (person: string): string | undefined =>
  person.startsWith(COMPLAINANT) ? person.slice(COMPLAINANT.length) : undefined;

/**
 * Under whose key a text is sealed. Its writer's, so that it goes with them; but what must live as long as the home has a
 * key of its own, and only the routes of claims and determinations open it; and what a complainant said has a third, since
 * it may say who they are.
 */
const keyHolder = ({ kind, serial }: StreamRef, field: string, writer: string): string => {
  if (!KEPT_FOR_THE_HOME.has(kind)) return writer;
  return kind === 'claim' && field === 'words' ? `${COMPLAINANT}${serial}` : `file:${kind}/${serial}`;
};

/** Which field of the request a rejection is about, where it names one. */
const FIELDS: { readonly [field: string]: string } = {
  serial: 'serial',
  station: 'station',
  operation: 'operation',
  place: 'except',
  lot: 'lots',
  instrument: 'instrument',
  component: 'component',
  symptom: 'symptom',
  reason: 'reason',
  number: 'number',
  kind: 'kind',
};

type Bodied = { readonly [field: string]: unknown };

export const rejected = (rejection: Rejection, body: Bodied): Told<never> => {
  const pointer = pointerOf(rejection, body);
  return { ok: false, rejection: { ...rejection, ...(pointer === undefined ? {} : { pointer }) } };
};

const pointerOf = (rejection: Rejection, body: Bodied): string | undefined => {
  const { characteristic } = rejection;
  if (characteristic !== undefined) return valuePointer(characteristic, body);

  const bySame = Object.keys(body).find(
    (field) => typeof body[field] === 'string' && Object.values(rejection).slice(1).includes(body[field]),
  );
  if (bySame !== undefined) return `/${bySame}`;
  const field = Object.keys(FIELDS).find(
    (name) => rejection[name] !== undefined && FIELDS[name] !== undefined,
  );
  const named = field === undefined ? undefined : FIELDS[field];
  return named !== undefined && named in body ? `/${named}` : undefined;
};

const valuePointer = (characteristic: unknown, { values }: Bodied): string | undefined => {
  if (!Array.isArray(values)) return undefined;
  const index = values.findIndex(
    (value: { readonly characteristic?: unknown }) => value.characteristic === characteristic,
  );
  return index < 0 ? undefined : `/values/${index}`;
};
