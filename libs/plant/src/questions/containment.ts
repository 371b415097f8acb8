import type { AnswerOf } from '@libs/contracts';
import { coveredBy } from '@libs/judge';
import { epochMs, floorDay } from '@libs/kernel';
import { CONTAINMENT, SECTION, usedIn } from '@libs/record';
import type { Shared, Unit } from '@libs/record';
import type { SectionCard } from '@libs/views';
import type { Asked } from './asked';

type Sharing = AnswerOf<'sharing'>;
type Span = { readonly from: string | null; readonly to: string | null };

/** Not shipped: whatever stands in the plant or its yard. */
const IN_THE_PLANT = ['on-line', 'pulled'];

/** Which other sections still in the plant share what the failing one's own record says of an operation. */
export const sharingQuestion =
  (asked: Asked) =>
  async (serial: string, operation: string, span: Span): Promise<Sharing | undefined> => {
    const failing = await asked.ledger.state(SECTION, serial);
    if (failing.kind === 'unknown') return undefined;

    const facts = doneOf(failing, operation);
    const cards = (await asked.views.cards(IN_THE_PLANT)).filter((card) => card.serial !== serial);
    // The writer has those at work at hand; the others are read side by side.
    const units = await Promise.all(cards.map((card) => asked.ledger.state(SECTION, card.serial)));
    const sections = cards.flatMap((card, index) => {
      const unit = units[index];
      const shares = unit === undefined ? [] : sharedBy(facts, doneOf(unit, operation), span);
      return unit === undefined || shares.length === 0 ? [] : [row(card, unit, { operation, shares }, asked)];
    });
    const { crew, at, lots, instrument, model } = facts;
    return {
      serial,
      operation,
      facts: { crew, day: at === null ? null : floorDay(at), lots: [...lots], instrument, model },
      sections: sections.sort((one, other) => other.shares.length - one.shares.length),
      looked: cards.length,
    };
  };

/** What is on record of one operation on one section, as far as it can be shared. */
export type DoneOnce = {
  readonly at: string | null;
  readonly crew: string | null;
  readonly lots: readonly string[];
  readonly instrument: string | null;
  readonly model: string;
};

const doneOf = (unit: Unit, operation: string): DoneOnce => {
  const done = unit.work[operation];
  const evidence = unit.evidence[operation];
  return {
    at: done?.occurredAt ?? null,
    crew: done?.crew ?? null,
    lots: evidence === undefined ? [] : usedIn(operation, evidence).map(({ lot }) => lot),
    instrument: evidence?.instrument ?? null,
    model: unit.model,
  };
};

/** A shift is a crew on one day of the floor. A design is shared once the operation was done to it at all. */
export const sharedBy = (failing: DoneOnce, other: DoneOnce, span: Span): Shared[] => {
  const { at } = other;
  return at === null ? [] : SHARED.filter((by) => SAME[by](failing, { ...other, at }, span));
};

const SHARED: readonly Shared[] = ['crew', 'shift', 'lot', 'instrument', 'design', 'span'];

type Done = DoneOnce & { readonly at: string };

const sameCrew = ({ crew }: DoneOnce, other: DoneOnce): boolean => crew !== null && crew === other.crew;

const SAME: { readonly [by in Shared]: (failing: DoneOnce, other: Done, span: Span) => boolean } = {
  crew: sameCrew,
  shift: (failing, other) =>
    sameCrew(failing, other) && failing.at !== null && floorDay(failing.at) === floorDay(other.at),
  lot: ({ lots }, other) => other.lots.some((lot) => lots.includes(lot)),
  instrument: ({ instrument }, other) => instrument !== null && instrument === other.instrument,
  design: ({ model }, other) => model === other.model,
  span: (_failing, { at }, { from, to }) => (from !== null || to !== null) && isWithin(at, from, to),
};

const isWithin = (at: string, from: string | null, to: string | null): boolean =>
  (from === null || epochMs(at) >= epochMs(from)) && (to === null || epochMs(at) <= epochMs(to));

const row = (
  { serial, home, model, station, label }: SectionCard,
  unit: Unit,
  { operation, shares }: { readonly operation: string; readonly shares: Shared[] },
  { plans }: Asked,
): Sharing['sections'][number] => {
  const { revision, design } = unit;
  const isJudged = revision !== null && plans.ofRevision(revision) !== undefined;
  const plan = isJudged ? plans.planFor(revision, design) : null;
  const { at, crew } = doneOf(unit, operation);
  const covered = plan !== null && coveredBy(plan, unit, operation).length > 0;
  return { serial, home, model, station, shares, doneAt: at, crew, covered, label };
};

/** What is being contained, and how far each of it has come: the latest first. */
export const containmentsQuestion =
  ({ ledger, streamsOf }: Asked) =>
  async (): Promise<AnswerOf<'containments'>> => {
    const containments: AnswerOf<'containments'>['containments'] = [];
    for (const stream of await streamsOf(CONTAINMENT.name)) {
      const { opened, looked } = await ledger.state(CONTAINMENT, stream.slice(CONTAINMENT.name.length + 1));
      if (opened === null) continue;
      const sections = [];
      for (const section of opened.sections) {
        const unit = await ledger.state(SECTION, section.serial);
        const look = looked[section.serial];
        sections.push({
          serial: section.serial,
          shares: [...section.shares],
          station: unit.station,
          stage: unit.stage,
          standing: standingOf(unit, section.hold, look),
          lookedBy: look?.by ?? null,
        });
      }
      const { containment, serial, operation, by, at } = opened;
      const open = sections.filter(({ standing }) => standing === 'waiting' || standing === 'found').length;
      containments.push({ containment, serial, operation, by: [...by], at, sections, open });
    }
    return { containments: containments.sort((one, other) => epochMs(other.at) - epochMs(one.at)) };
  };

type Standing = AnswerOf<'containments'>['containments'][number]['sections'][number]['standing'];

/** Found and mended ends with its hold released; clear ends where somebody looked and found nothing. */
const standingOf = (
  unit: Unit,
  hold: string | null,
  look: { readonly found: boolean; readonly defect: string | null } | undefined,
): Standing => {
  if (look === undefined) return hold !== null && unit.closed.includes(hold) ? 'released' : 'waiting';
  if (!look.found) return 'clear';
  const isMended = look.defect === null || unit.closed.includes(look.defect);
  return isMended && (hold === null || unit.closed.includes(hold)) ? 'released' : 'found';
};
