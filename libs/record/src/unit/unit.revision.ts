import type {
  CompiledPlan,
  DoneWork,
  Entry,
  Finding,
  PlannedValue,
  UsedInstrument,
  WorkState,
  WorkedLot,
} from '@libs/judge';
import { judgeWork } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { ApplyRevision } from './unit.commands';
import { opened } from './unit.consequences';
import type { UnitEvent } from './unit.events';
import type { Applying, UnitFacts } from './unit.facts';
import { isGrave, saysTheSame } from './unit.findings';
import { known } from './unit.judging';
import type { UnitDecision } from './unit.rejections';
import type { ChangedRequirement, RevisionChanges } from './unit.revision.events';
import type { Unit } from './unit.state';

/** What a lot's certificate and an instrument's record say; null where there is none. */
export type Recordings = {
  readonly lot: (id: string) => WorkedLot | null;
  readonly instrument: (id: string) => UsedInstrument | null;
};

/** Whose turn it is to say something of work that is there already: values, and what is hidden or needed and absent. */
const OF_STANDING_WORK: ReadonlySet<string> = new Set([
  'value-out-of-limits',
  'value-missing',
  'value-of-wrong-kind',
  'relation-not-met',
  'cover-hides-unproven',
  'required-work-unproven',
]);

/** What it changes for a unit to be judged by another plan. The order things were done in is past, and stays so. */
export const changesUnder = (
  unit: Unit,
  plans: { readonly from: CompiledPlan; readonly to: CompiledPlan },
  state: WorkState,
  recordings: Recordings,
): RevisionChanges => {
  const { from, to } = plans;
  const ofUnit = (plan: CompiledPlan): readonly string[] =>
    plan.order.filter((id) => plan.operations[id]?.scope === unit.kind);
  const before = new Set(ofUnit(from));
  const after = new Set(ofUnit(to));
  const said = standingFindings(unit, from, state, recordings);
  return {
    due: [...after].filter((id) => !before.has(id) && unit.work[id] === undefined),
    notDue: [...before].filter((id) => !after.has(id)),
    changed: [...after].filter((id) => before.has(id)).flatMap((id) => changedIn(from, to, id)),
    findings: standingFindings(unit, to, state, recordings).filter(
      (finding) => !said.some((one) => saysTheSame(one, finding)),
    ),
  };
};

const changedIn = (
  from: CompiledPlan,
  to: CompiledPlan,
  operation: string,
): readonly ChangedRequirement[] => {
  if (from.operations[operation] === to.operations[operation]) return [];
  const before = valuesOf(from, operation);
  const after = valuesOf(to, operation);
  return [...new Set([...before.keys(), ...after.keys()])].flatMap((characteristic) => {
    const was = before.get(characteristic);
    const is = after.get(characteristic);
    return isSame(was, is) ? [] : [{ operation, characteristic, ...becoming(was, is) }];
  });
};

type Asked = PlannedValue | undefined;

/** Where and by whom it is read may change as it likes: what is asked is the same. */
const isSame = (was: Asked, is: Asked): boolean => requirementOf(was) === requirementOf(is);

const requirementOf = (value: Asked): string =>
  value === undefined ? '' : JSON.stringify([value.required, value.unit, value.grade]);

const becoming = (was: Asked, is: Asked): Pick<ChangedRequirement, 'before' | 'after' | 'unit'> => ({
  before: was === undefined ? null : was.required,
  after: is === undefined ? null : is.required,
  unit: (is ?? was)?.unit ?? null,
});

const valuesOf = (plan: CompiledPlan, operation: string): ReadonlyMap<string, PlannedValue> =>
  new Map((plan.operations[operation]?.values ?? []).map((value) => [value.characteristic, value]));

const standingFindings = (
  unit: Unit,
  plan: CompiledPlan,
  state: WorkState,
  recordings: Recordings,
): readonly Finding[] =>
  Object.entries(unit.work).flatMap(([operation, done]) =>
    plan.operations[operation] === undefined
      ? []
      : judgeWork(plan, state, asStanding(unit, operation, done, recordings)).filter(
          (finding) => isGrave(finding) && OF_STANDING_WORK.has(finding.rule),
        ),
  );

const asStanding = (unit: Unit, operation: string, done: DoneWork, recordings: Recordings): Entry => {
  const evidence = unit.evidence[operation];
  const { proof, except, values, actor, crew, occurredAt } = done;
  const instrument = evidence?.instrument ?? null;
  return {
    operation,
    proof,
    except,
    values,
    lots: (evidence?.lots ?? []).flatMap((id) => recordings.lot(id) ?? []),
    instrument: instrument === null ? null : recordings.instrument(instrument),
    photos: evidence?.photos ?? [],
    signer: { actor, crew, roles: [] },
    station: null,
    occurredAt,
  };
};

/** Being judged by that revision already records nothing. */
export const applyRevision = ({ data }: ApplyRevision, unit: Unit, facts: UnitFacts): UnitDecision => {
  const { plan, applying } = facts;
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  if (unit.revision === data.revision) return accept();
  // A section that has not started takes its home's revision when it does; one that has left is built.
  if (unit.kind === 'section' && (unit.revision === null || unit.stage === 'shipped')) return accept();
  if (unit.revision === null || plan === null) {
    return reject({ code: 'section-not-on-line', serial: data.serial });
  }
  if (applying === undefined) return reject({ code: 'revision-not-in-force', revision: data.revision });

  return accept(...applied(data, { unit, facts, from: plan, revision: unit.revision }, applying));
};

type Before = {
  readonly unit: Unit;
  readonly facts: UnitFacts;
  readonly from: CompiledPlan;
  readonly revision: number;
};

/** What the other revision does not accept of the work on record holds the unit, as it would have when told. */
const applied = (
  { serial, revision: to, note }: ApplyRevision['data'],
  { unit, facts, from, revision }: Before,
  applying: Applying,
): readonly UnitEvent[] => {
  const state = known(unit, facts);
  const changes = changesUnder(unit, { from, to: applying.plan }, state, applying);
  const found = {
    serial,
    findings: changes.findings,
    foundAt: unit.kind === 'home' ? null : unit.station,
    crewOf: (operation: string) => state.work[operation]?.crew ?? null,
  };
  return [
    {
      type: 'RevisionApplied',
      data: { serial, from: revision, to, ...changes, ...(note === undefined ? {} : { note }) },
      revision: to,
      planDigest: applying.plan.digest,
    },
    ...opened(unit, found, { idBase: facts.idBase, before: 1 }),
  ];
};
