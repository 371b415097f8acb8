import type {
  CompiledPlan,
  DoneWork,
  Entry,
  Finding,
  Proof,
  RecordedValue,
  Signer,
  WorkedLot,
} from '@libs/judge';
import { judgeWork } from '@libs/judge';
import { elapsedMs } from '@libs/kernel';
import type { UnitEvent, WorkData } from './unit.events';
import { opened, satisfied } from './unit.consequences';
import type { Found } from './unit.consequences';
import { carriedOver, isUnfinished } from './unit.entries';
import { evolve } from './unit.evolve';
import type { UnitFacts } from './unit.facts';
import type { Judging } from './unit.guards';
import { known } from './unit.judging';
import { asRecorded } from './unit.pending';
import type { Unit } from './unit.state';

/** A sign-off at the end of a shift is usual; what comes later than this was written down from memory. */
export const LATE_AFTER_MS = 30 * 60_000;

/** One entry of work, whichever command it comes from. */
export type Told = {
  readonly operation: string;
  readonly proof: Proof;
  readonly except: readonly string[];
  readonly values: readonly RecordedValue[];
  readonly lots: readonly WorkedLot[];
  readonly instrument: string | null;
  readonly photos: readonly string[];
  readonly crew: string | null;
  readonly movedFrom?: WorkData['movedFrom'];
  readonly note?: string;
};

/**
 * An entry with all it leads to: what it opens, and what it makes good. `before`: events of the same command
 * that stand before it.
 */
export const entered = (unit: Unit, told: Told, judging: Judging, before: number): readonly UnitEvent[] => {
  const { plan, facts } = judging;
  const findings = findingsOf(unit, told, judging);
  const entry = entryEvent(unit, told, findings, judging);
  const after = evolve(unit, asRecorded(entry, facts));
  const found = foundIn(after, told.operation, findings, judging);
  return [
    entry,
    ...opened(unit, found, { idBase: facts.idBase, before: before + 1 }),
    ...satisfied(after, { operation: told.operation, proof: told.proof, findings }, { plan, facts }),
  ];
};

export const foundIn = (
  after: Unit,
  entry: string,
  findings: readonly Finding[],
  judging: Judging,
): Found => ({
  serial: after.serial,
  findings,
  foundAt: foundAt(after, entry, judging),
  crewOf: (operation) => known(after, judging.facts).work[operation]?.crew ?? null,
});

/** Where the crew stood; else where the unit is, else the operation's own station. At its site: in the field. */
const foundAt = (unit: Unit, operation: string, { plan, facts }: Judging): string | null =>
  unit.kind === 'home'
    ? null
    : (facts.station ?? unit.station ?? plan.operations[operation]?.station ?? null);

/** A value carried over from an unfinished entry has been judged before. */
const findingsOf = (unit: Unit, told: Told, judging: Judging): readonly Finding[] => {
  const given = new Set(told.values.map(({ characteristic }) => characteristic));
  const findings = judgeWork(judging.plan, known(unit, judging.facts), entryOf(unit, told, judging));
  const before = priorEntry(unit, told, judging.plan);
  if (!isUnfinished(before)) return findings;

  return findings.filter(
    ({ rule, characteristic, operation }) =>
      rule !== 'value-out-of-limits' ||
      operation !== told.operation ||
      characteristic === undefined ||
      given.has(characteristic) ||
      !before.values.some((value) => value.characteristic === characteristic),
  );
};

/** A test is made anew each time: nothing of the one before is carried over. */
const priorEntry = (unit: Unit, told: Told, plan: CompiledPlan): DoneWork | undefined =>
  plan.operations[told.operation]?.entry === 'T' ? undefined : unit.work[told.operation];

const entryOf = (unit: Unit, told: Told, { plan, facts }: Judging): Entry => ({
  operation: told.operation,
  proof: told.proof,
  except: told.except,
  values: carriedOver(priorEntry(unit, told, plan), told.values),
  lots: told.lots,
  instrument: facts.instrument,
  photos: told.photos,
  signer: signerOf(told, facts),
  station: facts.station,
  occurredAt: facts.occurredAt,
});

/** Who signs for work stands in for the crew that did it; who vouches for the work of others does not. */
export const signerOf = ({ proof, crew }: Pick<Told, 'proof' | 'crew'>, { signer }: UnitFacts): Signer =>
  proof === 'signed' ? { ...signer, crew: crew ?? signer.crew } : signer;

const entryEvent = (
  unit: Unit,
  told: Told,
  findings: readonly Finding[],
  { plan, facts }: Judging,
): UnitEvent => {
  const data = workData(unit.serial, told, findings, facts);
  const judged = { revision: plan.revision, planDigest: plan.digest };
  return plan.operations[told.operation]?.entry === 'T'
    ? {
        type: 'TestRecorded',
        data: { ...data, passed: findings.every(({ grade }) => grade === 'note') },
        ...judged,
      }
    : { type: 'WorkRecorded', data, ...judged };
};

export const workData = (
  serial: string,
  told: Told,
  findings: readonly Finding[],
  facts: UnitFacts,
): WorkData => ({
  serial,
  operation: told.operation,
  proof: told.proof,
  except: told.except,
  values: told.values,
  lots: told.lots.map(({ lot }) => lot),
  instrument: told.instrument,
  photos: told.photos,
  crew: told.proof === 'signed' ? (told.crew ?? facts.signer.crew) : told.crew,
  findings,
  missing: missingOf(told.operation, findings),
  late: isLate(facts),
  ...(told.movedFrom === undefined ? {} : { movedFrom: told.movedFrom, signedBy: facts.signer.actor }),
  ...(told.note === undefined ? {} : { note: told.note }),
});

const missingOf = (entry: string, findings: readonly Finding[]): readonly string[] =>
  findings.flatMap(({ rule, operation, characteristic }) =>
    rule === 'value-missing' && operation === entry && characteristic !== undefined ? [characteristic] : [],
  );

/** By the device's clock as we know it to run. */
const isLate = ({ occurredAt, receivedAt, skewMs }: UnitFacts): boolean =>
  elapsedMs(occurredAt, receivedAt) + skewMs > LATE_AFTER_MS;
