import { canonicalJson, epochMs } from '@libs/kernel';
import type { Json, JsonObject } from '@libs/kernel';
import { RED_TAG, redTagHold } from '@libs/record';
import type { RecordedUnitEvent } from '@libs/record';
import type { SectionCard } from './section-card';

type Of<T extends RecordedUnitEvent['type']> = Extract<RecordedUnitEvent, { readonly type: T }>;

/** The card after this event. The way through the plant goes by ledger order, as the decider has it. */
export const nextCard = (card: SectionCard, event: RecordedUnitEvent): SectionCard => {
  const next = changed(card, event);
  return isLatest(card, event) ? { ...next, last: lastOf(event) } : next;
};

const changed = (card: SectionCard, event: RecordedUnitEvent): SectionCard => {
  switch (event.type) {
    case 'WorkRecorded':
    case 'TestRecorded':
    case 'WorkCorrected':
      return worked(card, event);
    case 'WorkWithdrawn':
      return withdrawn(card, event);
    case 'DefectRecorded':
    case 'DefectVerified':
    case 'DefectClosed':
      return { ...card, defects: openDefects(card.defects, event) };
    case 'HoldPlaced':
      return held(card, event);
    case 'HoldReleased':
      return { ...card, holds: card.holds.filter(({ hold }) => hold !== event.data.hold) };
    default:
      return wentOn(card, event);
  }
};

const wentOn = (card: SectionCard, event: RecordedUnitEvent): SectionCard => {
  const since = event.occurredAt;
  switch (event.type) {
    case 'HomeOrdered':
    case 'SectionOrdered':
      return ordered(card, event);
    case 'HomeStarted':
      return { ...card, stage: 'on-line', since, revision: event.data.revision };
    case 'SectionStarted':
      return { ...card, stage: 'on-line', since, station: event.data.at, revision: event.data.revision };
    case 'RevisionApplied':
      return { ...card, revision: event.data.to };
    case 'SectionMoved':
      return { ...card, since, station: event.data.to, open: event.data.open };
    case 'SectionPulled':
      return { ...card, stage: 'pulled', since, pulledFor: event.data.reason };
    case 'SectionReturned':
      return { ...card, stage: 'on-line', since, station: event.data.to, pulledFor: null };
    case 'SectionShipped':
      return { ...card, stage: 'shipped', since, station: null, pulledFor: null };
    default:
      return released(card, event);
  }
};

/** What the inspection agency and the label make of it. */
const released = (card: SectionCard, event: RecordedUnitEvent): SectionCard => {
  switch (event.type) {
    case 'LabelAffixed':
      return { ...card, label: event.data.number, labelledAt: card.labelledAt ?? event.occurredAt };
    case 'LabelReplaced':
      return { ...card, label: event.data.number };
    case 'StageSeen':
      return { ...card, seen: [...new Set([...card.seen, event.data.station])] };
    case 'RedTagPlaced':
      return redTagged(card, event);
    case 'RedTagLifted':
      return { ...card, holds: card.holds.filter(({ hold }) => hold !== redTagHold(event.data.tag)) };
    default:
      return card;
  }
};

const ordered = (card: SectionCard, { data }: Of<'HomeOrdered' | 'SectionOrdered'>): SectionCard => ({
  ...card,
  home: data.home,
  model: data.model,
  role: data.design['role'] ?? null,
  sections: data.sections,
});

/** An entry that leaves nothing to be done takes its operation off the work carried along. */
const worked = (
  card: SectionCard,
  { data }: Of<'WorkRecorded' | 'TestRecorded' | 'WorkCorrected'>,
): SectionCard =>
  data.except.length === 0 && data.missing.length === 0 && card.open.includes(data.operation)
    ? { ...card, open: card.open.filter((operation) => operation !== data.operation) }
    : card;

const withdrawn = (card: SectionCard, { data }: Of<'WorkWithdrawn'>): SectionCard => ({
  ...card,
  holds: card.holds.filter(({ hold }) => !data.holds.includes(hold)),
  defects: data.defects.reduce(without, card.defects),
});

const openDefects = (
  open: SectionCard['defects'],
  event: Of<'DefectRecorded' | 'DefectVerified' | 'DefectClosed'>,
): SectionCard['defects'] => {
  const { data, type } = event;
  if (type === 'DefectRecorded') return { ...open, [data.defect]: event.data.class };
  return type === 'DefectVerified' && !event.data.accepted ? open : without(open, data.defect);
};

const held = (card: SectionCard, { data, occurredAt }: Of<'HoldPlaced'>): SectionCard => {
  const { hold, reason, operation, characteristic, defect } = data;
  const others = card.holds.filter((open) => open.hold !== hold);
  return {
    ...card,
    holds: [...others, { hold, reason, operation, characteristic, defect, since: occurredAt }],
  };
};

/** Among the holds, as the decider has it. */
const redTagged = (card: SectionCard, { data, occurredAt: since }: Of<'RedTagPlaced'>): SectionCard => {
  const tag = { hold: redTagHold(data.tag), reason: RED_TAG, operation: null };
  return { ...card, holds: [...card.holds, { ...tag, characteristic: null, defect: null, since }] };
};

const without = (defects: SectionCard['defects'], id: string): SectionCard['defects'] => {
  if (!(id in defects)) return defects;
  const { [id]: _over, ...rest } = defects;
  return rest;
};

/** A late entry of something that happened earlier is not what happened last. */
const isLatest = ({ last }: SectionCard, { occurredAt }: RecordedUnitEvent): boolean =>
  last.occurredAt === '' || !isBefore(occurredAt, last.occurredAt);

/** Instants of one offset and length compare as text, which is how nearly all of a section's do. */
const isBefore = (a: string, b: string): boolean =>
  a.length === b.length && offsetOf(a) === offsetOf(b) ? a < b : epochMs(a) < epochMs(b);

const offsetOf = (instant: string): string => (instant.endsWith('Z') ? 'Z' : instant.slice(-OFFSET_LENGTH));
const OFFSET_LENGTH = '-06:00'.length;

const lastOf = ({ position, type, occurredAt, data }: RecordedUnitEvent): SectionCard['last'] => ({
  position,
  type,
  occurredAt,
  data,
});

/** A card is changed many times before it is written once: what is said of its last event can wait until then. */
export const storedCard = (card: SectionCard): SectionCard =>
  typeof card.last.data === 'string'
    ? card
    : { ...card, last: { ...card.last, data: said(card.last.type, card.last.data) } };

/**
 * What a sentence needs, as RFC 8785 text: an event fresh from its decision has its members in another order than a
 * stored one. What says nothing (none, no, empty) is left out: a card is written with every event.
 */
const said = (type: string, data: JsonObject): string => {
  const isWork = type === 'WorkRecorded' || type === 'TestRecorded' || type === 'WorkCorrected';
  const kept: { [field: string]: Json | undefined } = {};
  for (const [field, value] of Object.entries(data)) {
    if (!UNSAID.has(field) && !saysNothing(value) && !(isWork && field === 'findings')) kept[field] = value;
  }
  return canonicalJson(kept);
};

/** Sealed text has no place in a view; the rest is not said in one line. */
const UNSAID: ReadonlySet<string> = new Set([
  ...['note', 'values', 'photos', 'lots', 'design', 'instrument', 'late'],
  ...['shops', 'holds', 'defects'],
]);

const saysNothing = (value: Json | undefined): boolean =>
  value === null || value === false || (Array.isArray(value) && value.length === 0);
