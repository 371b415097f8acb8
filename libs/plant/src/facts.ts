import type { CompiledPlan, Signer, UsedInstrument, WorkedLot } from '@libs/judge';
import { lotKindsOf } from '@libs/judge';
import { floorDay } from '@libs/kernel';
import type { Meta, ReadStream } from '@libs/kernel';
import {
  HOME,
  INSTRUMENT,
  LOT,
  PERSON,
  RULEBOOK,
  SECTION,
  STATION,
  inForceAt,
  isUsableInstrument,
  isUsableLot,
} from '@libs/record';
import type { Instrument, Lot, MountedLot, Unit, UnitFacts } from '@libs/record';
import { judgeDestination } from '@libs/rulebook';
import { codesOf } from './codes';
import { heldStations, releaseFacts } from './release-facts';
import { workOfSections } from './home-plan';
import type { PlannedSection } from './home-plan';
import type { Plans } from './plans';
import type { UnitRef, Wanted } from './wanted';

type Ground = {
  readonly read: ReadStream;
  readonly meta: Meta;
  readonly plans: Plans;
  readonly unit: Unit;
};

export const kindOf = (ref: UnitRef): typeof SECTION => (ref.kind === 'home' ? HOME : SECTION);

/** All facts of a unit's decision, read inside the writer. Pure, and may run more than once. */
export const unitFacts =
  (plans: Plans, ref: UnitRef, wanted: Wanted) =>
  (read: ReadStream, meta: Meta): UnitFacts => {
    const ground: Ground = { read, meta, plans, unit: read(kindOf(ref), ref.serial) };
    const judged = judgedBy(ground, ref);
    const moved = wanted.moves === undefined ? null : movedEntry(read, wanted.moves);

    return {
      ...judged,
      ...usedFacts(ground, judged.plan, wanted, moved),
      signer: signerOf(read, moved?.done.actor ?? meta.actor, wanted.senderRoles),
      idBase: `${meta.key}${wanted.part ?? ''}`,
      occurredAt: meta.occurredAt,
      receivedAt: wanted.receivedAt,
      skewMs: meta.skewMs ?? 0,
      station: meta.station,
      moved,
      ...releaseFacts(read, meta, ground.unit, wanted),
      ...changeFacts(ground, judged, wanted),
      heldStations: heldStations(read, judged.plan, wanted),
    };
  };

type JudgedBy = Pick<UnitFacts, 'plan' | 'codes' | 'revisionInForce' | 'homeRevision' | 'ofSections'>;

/** The revision a unit is judged by: its own, its home's, or for one that starts now the one in force. */
const judgedBy = (ground: Ground, ref: UnitRef): JudgedBy => {
  const { read, plans, unit } = ground;
  const homeRevision = unit.home === '' ? null : read(HOME, unit.home).revision;
  const revisionInForce = revisionAt(ground);
  const revision = unit.revision ?? homeRevision;
  const known = plans.ofRevision(revision ?? revisionInForce ?? 0);
  const codes = known === undefined ? null : codesOf(known.rulebook);
  if (revision === null) return { plan: null, codes, revisionInForce, homeRevision, ofSections: null };

  const sections = ref.kind === 'home' ? sectionsOf(ground, revision) : null;
  const plan = planOf(ground, revision, sections);
  const ofSections = sections === null ? null : workOfSections(sections);
  return { plan, codes, revisionInForce, homeRevision, ofSections };
};

type UsedFacts = Pick<UnitFacts, 'mounted' | 'scanned' | 'instrument'>;

const usedFacts = (
  ground: Ground,
  plan: CompiledPlan | null,
  wanted: Wanted,
  moved: UnitFacts['moved'],
): UsedFacts => {
  const used = usedIn(ground.unit, wanted, moved);
  return {
    mounted: plan === null ? [] : mountedFor(ground, plan, wanted.operations?.(plan) ?? []),
    scanned: used.lots.flatMap((lot) => workedLot(ground, lot) ?? []),
    instrument: used.instrument === null ? null : usedInstrument(ground, used.instrument),
  };
};

/** Revisions come in as they are seen: one issued in this very batch is known before it is asked for. */
const revisionAt = ({ read, meta, plans }: Ground): number | null => {
  const history = read(RULEBOOK, 'rulebook');
  for (const issued of history.revisions) plans.learn(issued);
  return inForceAt(history, meta.occurredAt)?.revision ?? null;
};

/** Null while a home's sections are still to be loaded: the writer asks again. */
const planOf = (
  { plans, unit }: Ground,
  revision: number,
  sections: readonly PlannedSection[] | null,
): CompiledPlan | null => {
  const { design, deviations } = unit;
  if (sections === null) return plans.deviated(plans.planFor(revision, design), deviations);
  if (sections.length < unit.sections.length) return null;

  const designs = sections.map(({ plan }) => plan.design);
  return plans.deviated(plans.planForHome(revision, design, designs), deviations);
};

const sectionsOf = ({ read, plans, unit }: Ground, revision: number): readonly PlannedSection[] =>
  unit.sections
    .map((serial) => read(SECTION, serial))
    .filter(({ kind }) => kind === 'section')
    .map((section) => ({
      unit: section,
      plan: plans.deviated(plans.planFor(revision, section.design), section.deviations),
    }));

type ChangeFacts = Pick<UnitFacts, 'applying' | 'outsideZones'>;

/** Read only where something changes: another design, another county. */
const changeFacts = (ground: Ground, judged: JudgedBy, { changesTo, zones }: Wanted): ChangeFacts => ({
  ...(changesTo === undefined || judged.plan === null
    ? {}
    : { applying: changedPlan(ground, judged.plan.revision, changesTo) }),
  ...(zones === undefined ? {} : zoneFacts(ground, judged, zones)),
});

const changedPlan = (
  { read, meta, plans, unit }: Ground,
  revision: number,
  { design = unit.design, deviations = unit.deviations }: NonNullable<Wanted['changesTo']>,
): NonNullable<UnitFacts['applying']> => ({
  plan: plans.deviated(plans.planFor(revision, design), deviations),
  lot: (id) => workedLot({ read, meta }, id),
  instrument: (id) => usedInstrument({ read, meta }, id),
});

const zoneFacts = (
  { read, plans, unit }: Ground,
  { homeRevision, revisionInForce }: JudgedBy,
  zones: NonNullable<Wanted['zones']>,
): ChangeFacts => {
  const rulebook = plans.ofRevision(homeRevision ?? revisionInForce ?? 0)?.rulebook;
  if (rulebook === undefined) return {};
  const destination = zones.destination ?? read(HOME, unit.home).destination;
  return { outsideZones: judgeDestination(rulebook, unit.design, destination) };
};

const signerOf = (read: ReadStream, actor: string, senderRoles: readonly string[]): Signer => {
  const { crew, qualifications } = read(PERSON, actor);
  return {
    actor,
    roles: rolesOf(read, actor, senderRoles),
    crew,
    ...(qualifications.length === 0 ? {} : { qualifications }),
  };
};

/** A person's roles stand in the ledger; a machine's come with its token. */
export const rolesOf = (
  read: ReadStream,
  actor: string,
  senderRoles: readonly string[],
): readonly string[] => {
  const { enrolled, roles } = read(PERSON, actor);
  return enrolled ? roles : senderRoles;
};

const movedEntry = (
  read: ReadStream,
  { from, operation }: NonNullable<Wanted['moves']>,
): UnitFacts['moved'] => {
  const unit = read(kindOf(from), from.serial);
  const done = unit.work[operation];
  const evidence = unit.evidence[operation];
  return done === undefined || evidence === undefined ? null : { done, evidence };
};

type Used = { readonly lots: readonly string[]; readonly instrument: string | null };

const usedIn = (unit: Unit, wanted: Wanted, moved: UnitFacts['moved']): Used =>
  moved?.evidence ??
  (wanted.mends === undefined ? undefined : unit.evidence[wanted.mends]) ?? {
    lots: wanted.lots ?? [],
    instrument: wanted.instrument ?? null,
  };

/** Only lots of kinds these operations use up: a station has more mounted than one of them needs. */
const mountedFor = (
  ground: Ground,
  plan: CompiledPlan,
  operations: readonly string[],
): readonly MountedLot[] => {
  const planned = operations.flatMap((id) => plan.operations[id] ?? []);
  const kinds = new Set(planned.flatMap((operation) => [...lotKindsOf(operation)]));
  if (kinds.size === 0) return [];

  const stations = new Set([
    ...(ground.meta.station === null ? [] : [ground.meta.station]),
    ...planned.map(({ station }) => station),
  ]);
  return [...stations].flatMap((station) =>
    Object.entries(ground.read(STATION, station).mounted)
      .filter(([kind]) => kinds.has(kind))
      .flatMap(([, id]) => {
        const lot = workedLot(ground, id);
        return lot === null ? [] : [{ station, lot }];
      }),
  );
};

/** A lot and an instrument as a decision sees them. */
type Reading = { readonly read: ReadStream; readonly meta: Pick<Meta, 'occurredAt'> };

export const workedLot = ({ read, meta }: Reading, id: string): WorkedLot | null =>
  asWorked(read(LOT, id), id, floorDay(meta.occurredAt));

export const asWorked = (lot: Lot, id: string, day: string): WorkedLot | null =>
  lot.kind === null
    ? null
    : { lot: id, kind: lot.kind, usable: isUsableLot(lot, day), properties: lot.properties };

export const usedInstrument = ({ read, meta }: Reading, id: string): UsedInstrument | null =>
  asUsed(read(INSTRUMENT, id), id, floorDay(meta.occurredAt));

export const asUsed = (instrument: Instrument, id: string, day: string): UsedInstrument | null => {
  const { kind, properties, dueOn } = instrument;
  const usable = isUsableInstrument(instrument, day);
  return kind === null ? null : { instrument: id, kind, usable, dueOn, properties };
};
