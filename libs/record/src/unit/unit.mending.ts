import type { Finding } from '@libs/judge';
import { judgeWork } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { CorrectWork, WithdrawWork } from './unit.commands';
import { holdOf, opened, released, satisfied } from './unit.consequences';
import { foundIn, signerOf, workData } from './unit.entering';
import type { Told } from './unit.entering';
import type { DefectClosed, UnitEvent, WorkCorrected, WorkWithdrawn } from './unit.events';
import { evolve } from './unit.evolve';
import { entryOf, saysTheSame } from './unit.findings';
import { judgingOf, operationGuard } from './unit.guards';
import type { Judging } from './unit.guards';
import { known, saysOfOther } from './unit.judging';
import { asRecorded } from './unit.pending';
import type { Guard, UnitDecision } from './unit.rejections';
import type { Evidence, Unit } from './unit.state';
import { isKnown, placesGuard, valuesGuard } from './unit.values';

const reasonGuard = (reason: string, { codes }: Judging): Guard =>
  isKnown(codes.reasons, reason) ? null : { code: 'reason-unknown', reason };

/** Recorded here by mistake. What the entry had opened goes with it; what it had made good is open again. */
export const withdrawWork = ({ data }: WithdrawWork, unit: Unit, facts: Judging['facts']): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const unfit =
    operationGuard(unit, data.operation, ready.judging) ?? reasonGuard(data.reason, ready.judging);
  if (unfit !== null) return reject(unfit);
  const { operation } = data;
  if (data.movedTo === unit.serial) return reject({ code: 'same-serial', serial: data.movedTo });
  const evidence = unit.evidence[operation];
  if (evidence === undefined) return reject({ code: 'work-not-recorded', operation });

  const events = withdrawn(data, unit);
  const after = events.reduce((state, event) => evolve(state, asRecorded(event, facts)), unit);
  const again = reopened(after, evidence, { idBase: facts.idBase, before: events.length });
  const standing = again.reduce((state, event) => evolve(state, asRecorded(event, facts)), after);
  return accept(
    ...events,
    ...again,
    ...leftUnproven(standing, operation, ready.judging, events.length + again.length),
  );
};

const withdrawn = (data: WithdrawWork['data'], unit: Unit): readonly UnitEvent[] => {
  const { operation } = data;
  const position = unit.work[operation]?.position;
  const isRaised = (id: string): boolean => {
    const raised = unit.raised[id];
    return raised !== undefined && entryOf(raised.finding) === operation && raised.at === position;
  };
  const holds = unit.holds.map(({ hold }) => hold).filter(isRaised);
  const defects = unit.defects.map(({ defect }) => defect).filter(isRaised);
  const event: WorkWithdrawn = {
    type: 'WorkWithdrawn',
    data: { ...data, holds, defects },
    ...(position === undefined ? {} : { corrects: position }),
  };
  return [
    event,
    ...defects.map((defect) => closed(unit.serial, defect)),
    ...holds.map((hold) => released(unit.serial, hold, 'withdrawn')),
  ];
};

const closed = (serial: string, defect: string): DefectClosed => ({
  type: 'DefectClosed',
  data: { serial, defect, how: 'withdrawn' },
});

/** Holds that were open before the entry was made are open again, as far as what raised them still stands. */
const reopened = (
  after: Unit,
  { satisfied: madeGood }: Evidence,
  { idBase, before }: { readonly idBase: string; readonly before: number },
): readonly UnitEvent[] =>
  madeGood
    .filter(({ finding }) => after.work[entryOf(finding)] !== undefined)
    .map(({ finding }, index) =>
      holdOf(after.serial, finding, { hold: `${idBase}-${before + index}`, defect: null }),
    );

/** Work that was entered on the strength of the mistaken entry, covers above all, now stands on nothing. */
const leftUnproven = (
  after: Unit,
  operation: string,
  judging: Judging,
  before: number,
): readonly UnitEvent[] => {
  const findings = Object.keys(after.work)
    .filter((entry) => entry !== operation && leansOn(entry, operation, judging))
    .flatMap((entry) => saysOfOther(after, entry, operation, judging));
  return opened(after, foundIn(after, operation, findings, judging), {
    idBase: judging.facts.idBase,
    before,
  });
};

const leansOn = (entry: string, operation: string, { plan }: Judging): boolean => {
  const planned = plan.operations[entry];
  return (
    planned !== undefined &&
    [...planned.requires, ...planned.hides].some((edge) => edge.operation === operation)
  );
};

/** The work was right and what was written was not: the new values take the place of the old ones. */
export const correctWork = ({ data }: CorrectWork, unit: Unit, facts: Judging['facts']): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const { plan, codes } = ready.judging;
  const unfit =
    operationGuard(unit, data.operation, ready.judging) ??
    placesGuard(data.except, codes) ??
    valuesGuard(plan.operations[data.operation], data.values, codes) ??
    reasonGuard(data.reason, ready.judging);
  if (unfit !== null) return reject(unfit);
  const told = correctedEntry(data, unit, ready.judging);
  if (told === null) return reject({ code: 'work-not-recorded', operation: data.operation });

  return accept(...corrected(told, data.reason, unit, ready.judging));
};

const correctedEntry = (data: CorrectWork['data'], unit: Unit, { facts }: Judging): Told | null => {
  const done = unit.work[data.operation];
  const evidence = unit.evidence[data.operation];
  if (done === undefined || evidence === undefined) return null;

  return {
    operation: data.operation,
    proof: done.proof,
    except: data.except,
    values: data.values,
    lots: facts.scanned,
    instrument: evidence.instrument,
    photos: evidence.photos,
    crew: done.crew,
    ...(data.note === undefined ? {} : { note: data.note }),
  };
};

const corrected = (told: Told, reason: string, unit: Unit, judging: Judging): readonly UnitEvent[] => {
  const { plan, facts } = judging;
  const { operation } = told;
  const findings = findingsOfCorrection(told, unit, judging);
  const position = unit.work[operation]?.position;
  const event: WorkCorrected = {
    type: 'WorkCorrected',
    data: { ...workData(unit.serial, told, findings, facts), reason },
    revision: plan.revision,
    planDigest: plan.digest,
    ...(position === undefined ? {} : { corrects: position }),
  };
  const after = evolve(unit, asRecorded(event, facts));
  return [
    event,
    ...opened(after, foundIn(after, operation, findings, judging), { idBase: facts.idBase, before: 1 }),
    ...satisfied(after, { operation, proof: told.proof, findings }, judging),
    ...neverWas(after, { operation, findings }, judging),
  ];
};

const findingsOfCorrection = (told: Told, unit: Unit, { plan, facts }: Judging): readonly Finding[] =>
  judgeWork(plan, known(unit, facts), {
    ...told,
    instrument: facts.instrument,
    signer: signerOf(told, facts),
    station: facts.station,
    occurredAt: facts.occurredAt,
  });

/**
 * A nonconformance that was only written never was. The crew it speaks against cannot write it away, though:
 * that takes the quality manager's hand.
 */
const neverWas = (
  after: Unit,
  { operation, findings }: { readonly operation: string; readonly findings: readonly Finding[] },
  { facts }: Judging,
): readonly UnitEvent[] => {
  if (!facts.signer.roles.includes('quality-manager')) return [];

  const isGone = (id: string): boolean => {
    const finding = after.raised[id]?.finding;
    return (
      finding !== undefined &&
      entryOf(finding) === operation &&
      finding.operation === operation &&
      !findings.some((said) => saysTheSame(said, finding))
    );
  };
  return after.defects
    .filter(({ defect }) => isGone(defect))
    .flatMap(({ defect }): readonly UnitEvent[] => [
      closed(after.serial, defect),
      ...after.holds
        .filter((hold) => hold.defect === defect)
        .map(({ hold }) => released(after.serial, hold, 'withdrawn')),
    ]);
};
