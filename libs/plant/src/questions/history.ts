import { eventSays, findingSays, knowingDefects } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { Finding } from '@libs/judge';
import { elapsedMs, epochMs } from '@libs/kernel';
import type { Envelope } from '@libs/kernel';
import { typeOf } from '@libs/ledger';
import { LATE_AFTER_MS } from '@libs/record';
import { serialOf } from '@libs/views';
import type { Asked } from './asked';
import { eventId, leafHex } from './event-identity';
import { subjectOf } from './subject';

type HistoryAnswer = AnswerOf<'history'>;
type Entry = HistoryAnswer['entries'][number];

/** A home's history and its sections', in the order it happened; what was entered late stands where it happened. */
export const historyQuestion =
  (asked: Asked) =>
  async (serial: string): Promise<HistoryAnswer | undefined> => {
    const { ledger } = asked;
    const subject = await subjectOf(serial, asked);
    if (subject === undefined) return undefined;

    const { unit, sections } = subject;
    const position = await ledger.head();
    const streams = [`home/${unit.home}`, ...unit.sections.map((each) => `section/${each}`)];
    const events = await ledger.ofStreams(streams);
    const mends = correctionsIn(events);
    const names = withDefects(asked.names, events);
    return {
      home: unit.home,
      model: unit.model,
      sections: sections.map(({ serial: of, design, stage, label }) => ({
        serial: of,
        role: design['role'] ?? null,
        stage,
        label,
      })),
      position,
      entries: [...events]
        .sort(asItHappened)
        .map((event) => entryOf(event, mends.get(event.position) ?? [], { ...asked, names })),
    };
  };

/** A sign-off is recorded at the head of what it signs, and reads after it. */
const asItHappened = (a: Envelope, b: Envelope): number =>
  epochMs(a.occurredAt) - epochMs(b.occurredAt) ||
  (a.key === b.key ? Number(isSignOff(a)) - Number(isSignOff(b)) : 0) ||
  a.position - b.position;

const isSignOff = ({ schema }: Envelope): boolean => typeOf(schema) === 'StationSignedOff';

/** An event about a defect has only its id: what it is stands earlier in the same history. */
const withDefects = (names: Asked['names'], events: readonly Envelope[]): Asked['names'] => {
  const told = events.map(({ schema, data }) => ({ type: typeOf(schema), data }));
  const { defect, hold } = knowingDefects(names.current(), told);
  return { ...names, ofRevision: (revision) => ({ ...names.ofRevision(revision), defect, hold }) };
};

/** Positions of the events that mend an event, by its position. */
const correctionsIn = (events: readonly Envelope[]): ReadonlyMap<number, readonly number[]> => {
  const mends = new Map<number, readonly number[]>();
  for (const { corrects, position } of events) {
    if (corrects !== undefined) mends.set(corrects, [...(mends.get(corrects) ?? []), position]);
  }
  return mends;
};

const entryOf = (event: Envelope, correctedBy: readonly number[], asked: Asked): Entry => {
  const type = typeOf(event.schema);
  const names = asked.names.ofRevision(event.revision);
  const { note, ...data } = event.data;
  return {
    position: event.position,
    id: eventId(event.ledger, event.position),
    stream: event.stream,
    version: event.version,
    type,
    serial: serialOf(event.stream),
    occurredAt: event.occurredAt,
    recordedAt: event.recordedAt,
    late: isLate(event),
    actor: event.actor,
    by: asked.names.person(event.actor),
    station: event.station,
    revision: event.revision,
    leaf: leafHex(event),
    corrects: event.corrects ?? null,
    signature: event.signature ?? null,
    correctedBy: [...correctedBy],
    says: eventSays(type, event.data, names),
    findings: findingsOf(event).map((finding) => ({
      ...finding,
      places: finding.places === undefined ? undefined : [...finding.places],
      says: findingSays(finding, names),
    })),
    note: typeof note === 'string' ? asked.unsealed(note, { stream: event.stream, field: 'note' }) : null,
    data,
  };
};

/** As the record judged it where it did; else by how long after it was recorded. */
const isLate = ({ data, occurredAt, recordedAt, skewMs }: Envelope): boolean =>
  typeof data['late'] === 'boolean'
    ? data['late']
    : elapsedMs(occurredAt, recordedAt) + (skewMs ?? 0) > LATE_AFTER_MS;

const findingsOf = ({ data }: Envelope): readonly Finding[] => {
  const { findings, finding } = data;
  if (Array.isArray(findings)) return known(findings);
  return typeof finding === 'object' && finding !== null ? known([finding]) : [];
};

/** What the judge put into the ledger is not validated again. */
const known = (findings: unknown): readonly Finding[] => findings as readonly Finding[];
