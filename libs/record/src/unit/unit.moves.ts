import type { CompiledPlan, DoneWork, Finding } from '@libs/judge';
import { openAt } from '@libs/judge';
import { accept, elapsedMs, reject } from '@libs/kernel';
import type { SetDestination } from './unit.release.commands';
import type { MoveSection, PullSection, ReturnSection, ShipSection } from './unit.commands';
import type { SectionMoved } from './unit.events';
import type { UnitFacts } from './unit.facts';
import { openBehind, openOfSection, shopsFedBetween, stationsSkipped } from './unit.open-work';
import type { Guard, UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';
import { isKnown } from './unit.values';

const onLine = (unit: Unit, serial: string): Guard => {
  if (unit.kind === 'unknown') return { code: 'section-unknown', serial };
  return unit.stage === 'on-line' ? null : { code: 'section-not-on-line', serial };
};

const stationGuard = (station: string, { codes }: UnitFacts): Guard =>
  codes !== null && isKnown(codes.stations, station) ? null : { code: 'station-unknown', station };

/** A move is a fact, whatever is open: what is left behind is carried along and stays in sight. */
export const moveSection = ({ data }: MoveSection, unit: Unit, facts: UnitFacts): UnitDecision => {
  const unfit = onLine(unit, data.serial) ?? stationGuard(data.to, facts);
  if (unfit !== null) return reject(unfit);
  if (unit.station === data.to) return accept();
  if (facts.plan === null) return reject({ code: 'section-not-on-line', serial: data.serial });

  return accept(moved(data.to, unit, facts, facts.plan));
};

const moved = (to: string, unit: Unit, facts: UnitFacts, plan: CompiledPlan): SectionMoved => {
  const from = unit.station;
  const shortages = unit.defects.filter((defect) => defect.class === 'shortage');
  const isComplete = (station: string): boolean =>
    openAt(plan, unit, station).length === 0 && !shortages.some((shortage) => shortage.station === station);
  const findings = wentWith(plan, unit, to);
  const shops = shopsFedBetween(plan, unit, to).map((station) => ({
    station,
    since: firstWorkAt(plan, unit, station) ?? facts.occurredAt,
    complete: isComplete(station),
  }));

  return {
    type: 'SectionMoved',
    data: {
      serial: unit.serial,
      from,
      to,
      open: openBehind(plan, unit, from),
      shortages: shortages.map(({ defect }) => defect),
      complete: from === null || isComplete(from),
      ...(shops.length === 0 ? {} : { shops }),
      ...(findings.length === 0 ? {} : { findings }),
    },
    revision: plan.revision,
    planDigest: plan.digest,
  };
};

/**
 * A move is never refused, for the section is there; but nobody takes a held section past a whole station without it
 * being said. The holds stay what they are: the move only notes them.
 */
const wentWith = (plan: CompiledPlan, unit: Unit, to: string): readonly Finding[] => [
  ...stationsSkipped(plan, unit, to).map((operation) =>
    leftOpen(plan, operation, { rule: 'station-skipped', grade: 'note' }),
  ),
  ...unit.holds.map(({ hold, operation, reason }) =>
    leftOpen(plan, operation ?? '', { rule: 'held', grade: 'note', hold, recorded: reason }),
  ),
];

/** The earliest entry of a shop, by the clock of those who made it. */
const firstWorkAt = (plan: CompiledPlan, unit: Unit, station: string): string | null =>
  Object.keys(unit.work)
    .filter((operation) => plan.operations[operation]?.station === station)
    .flatMap((operation) => entriesOf(unit, operation))
    .map(({ occurredAt }) => occurredAt)
    .reduce<string | null>((first, at) => (first === null || elapsedMs(at, first) > 0 ? at : first), null);

const entriesOf = (unit: Unit, operation: string): readonly DoneWork[] => {
  const entries: DoneWork[] = [];
  let done = unit.work[operation];
  let evidence = unit.evidence[operation];
  while (done !== undefined) {
    entries.push(done);
    const before = evidence?.before ?? undefined;
    done = before?.done;
    evidence = before?.evidence;
  }
  return entries;
};

/** Pulling a section that is off the line already records nothing. */
export const pullSection = ({ data }: PullSection, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.stage === 'pulled') return accept();
  const unfit = onLine(unit, data.serial) ?? reasonGuard(data.reason, facts);
  if (unfit !== null) return reject(unfit);

  return accept({ type: 'SectionPulled', data: { ...data, from: unit.station } });
};

const reasonGuard = (reason: string, { codes }: UnitFacts): Guard =>
  codes === null || isKnown(codes.reasons, reason) ? null : { code: 'reason-unknown', reason };

export const returnSection = ({ data }: ReturnSection, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  if (unit.stage !== 'pulled') return reject({ code: 'section-not-pulled', serial: data.serial });
  const unfit = stationGuard(data.to, facts);
  if (unfit !== null) return reject(unfit);

  return accept({ type: 'SectionReturned', data });
};

/** A section that has left is gone: what it left with is written down, and its holds stay open. */
export const shipSection = ({ data }: ShipSection, unit: Unit, facts: UnitFacts): UnitDecision => {
  if (unit.stage === 'shipped') return accept();
  const unfit = unit.stage === 'pulled' ? null : onLine(unit, data.serial);
  if (unfit !== null) return reject(unfit);
  if (facts.plan === null) return reject({ code: 'section-not-on-line', serial: data.serial });

  const { plan } = facts;
  return accept({
    type: 'SectionShipped',
    data: { ...data, findings: leftWith(plan, unit) },
    revision: plan.revision,
    planDigest: plan.digest,
  });
};

/** Open work, open defects and open holds, each charged where it fell short. */
const leftWith = (plan: CompiledPlan, unit: Unit): readonly Finding[] => [
  ...openOfSection(plan, unit).map((operation) => leftOpen(plan, operation, { rule: 'left-with-open-work' })),
  ...unit.defects.map(({ defect, operation, class: ofClass }) =>
    leftOpen(plan, operation ?? '', { rule: 'defect-open', class: ofClass, defect }),
  ),
  ...unit.holds.map(({ hold, operation }) => leftOpen(plan, operation ?? '', { rule: 'held', hold })),
];

const leftOpen = (
  plan: CompiledPlan,
  operation: string,
  said: Pick<Finding, 'rule' | 'hold' | 'defect' | 'recorded'> & Partial<Pick<Finding, 'class' | 'grade'>>,
): Finding => ({
  grade: 'hold',
  class: 'record',
  operation,
  station: plan.operations[operation]?.station ?? null,
  source: { kind: 'practice', reference: 'common practice, no published source', row: '' },
  ...said,
});

export const setDestination = ({ data }: SetDestination, unit: Unit): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.home });
  return unit.destination === data.destination ? accept() : accept({ type: 'DestinationSet', data });
};
