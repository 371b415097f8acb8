import type { OpenDefect } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { CloseDefect, RecordDefect, RecordRework, VerifyDefect } from './unit.commands';
import { madeBy, released } from './unit.consequences';
import type { DefectRecorded, HoldPlaced, UnitEvent } from './unit.events';
import type { Codes, UnitFacts } from './unit.facts';
import { judgingOf } from './unit.guards';
import type { Judging } from './unit.guards';
import { known } from './unit.judging';
import type { Guard, UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';
import { isKnown, placesGuard } from './unit.values';

export const recordDefect = ({ data }: RecordDefect, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const unfit = codesGuard(data, ready.judging.codes);
  if (unfit !== null) return reject(unfit);

  const recorded = defectRecorded(data, unit, ready.judging);
  return data.hold ? accept<UnitEvent>(recorded, holdFor(recorded, facts)) : accept(recorded);
};

type Coded = Pick<RecordDefect['data'], 'foundAt' | 'operation' | 'place' | 'component' | 'symptom'>;

export const codesGuard = (data: Coded, codes: Codes): Guard => {
  const { foundAt, operation, place, component, symptom } = data;
  if (foundAt !== null && !isKnown(codes.stations, foundAt)) {
    return { code: 'station-unknown', station: foundAt };
  }
  if (operation !== null && !codes.operations.has(operation)) return { code: 'operation-unknown', operation };
  if (!isKnown(codes.components, component)) return { code: 'component-unknown', component };
  if (!isKnown(codes.symptoms, symptom)) return { code: 'symptom-unknown', symptom };

  return place === null ? null : placesGuard([place], codes);
};

/** Charged to the operation named; where nobody names one, to the likeliest that the fault map knows. */
export const defectRecorded = (
  { hold: _hold, ...data }: RecordDefect['data'],
  unit: Unit,
  judging: Judging,
): DefectRecorded => {
  const likely = judging.codes.likelyCause(data.component, data.symptom, judging.plan);
  const operation = data.operation ?? likely;
  return {
    type: 'DefectRecorded',
    data: {
      ...data,
      operation,
      ...chargedTo(operation, unit, judging),
      ...(likely === null || likely === operation ? {} : { proposed: likely }),
      ...(isOfAgency(judging.facts) ? { agency: true } : {}),
    },
  };
};

/** The station of an operation, and the crew that did it as far as that is on record. */
export const chargedTo = (
  operation: string | null,
  unit: Unit,
  { plan, facts }: Judging,
): Pick<DefectRecorded['data'], 'charged' | 'madeBy'> => {
  if (operation === null) return { charged: null };
  const crew = known(unit, facts).work[operation]?.crew ?? null;
  return { charged: plan.operations[operation]?.station ?? null, ...madeBy(crew) };
};

const holdFor = ({ data }: DefectRecorded, { idBase }: UnitFacts): HoldPlaced => ({
  type: 'HoldPlaced',
  data: {
    serial: data.serial,
    hold: `${idBase}-1`,
    reason: 'defect-open',
    operation: data.operation,
    characteristic: null,
    defect: data.defect,
  },
});

export type Sought =
  { readonly ok: true; readonly defect: OpenDefect } | (UnitDecision & { readonly ok: false });

export const openDefect = (unit: Unit, serial: string, id: string): Sought => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial });
  const defect = unit.defects.find((open) => open.defect === id);
  if (defect !== undefined) return { ok: true, defect };

  return reject({ code: unit.closed.includes(id) ? 'defect-already-closed' : 'defect-unknown', defect: id });
};

export const recordRework = ({ data }: RecordRework, unit: Unit): UnitDecision => {
  const sought = openDefect(unit, data.serial, data.defect);
  return sought.ok ? accept({ type: 'ReworkDone', data }) : sought;
};

/** Whoever did the rework does not say that it is right. */
export const verifyDefect = ({ data }: VerifyDefect, unit: Unit, facts: UnitFacts): UnitDecision => {
  const sought = openDefect(unit, data.serial, data.defect);
  if (!sought.ok) return sought;
  const { defect, state, reworkedBy } = sought.defect;
  if (state !== 'reworked') return reject({ code: 'rework-not-done', defect });
  if (reworkedBy === facts.signer.actor) return reject({ code: 'verified-by-own-hand', defect });

  const verified: UnitEvent = { type: 'DefectVerified', data };
  return data.accepted ? accept(verified, ...freed(unit, defect, 'verified')) : accept(verified);
};

/** The ways out that need no rework: a part is fitted, a punch item signed, a mistaken entry taken back. */
export const closeDefect = ({ data }: CloseDefect, unit: Unit, facts: UnitFacts): UnitDecision => {
  const sought = openDefect(unit, data.serial, data.defect);
  if (!sought.ok) return sought;
  const { defect } = sought.defect;
  if (data.how === 'withdrawn') {
    const unfit = decidersOnly(facts);
    if (unfit !== null) return reject(unfit);
  } else if (sought.defect.class === 'nonconformance') {
    return reject({ code: 'disposition-needed', defect });
  }

  const how = data.how === 'withdrawn' ? 'withdrawn' : 'satisfied';
  return accept<UnitEvent>({ type: 'DefectClosed', data }, ...freed(unit, defect, how));
};

export const freed = (
  unit: Unit,
  defect: string,
  how: 'verified' | 'satisfied' | 'withdrawn' | 'decided',
): readonly UnitEvent[] =>
  unit.holds.filter((hold) => hold.defect === defect).map(({ hold }) => released(unit.serial, hold, how));

const AGENCY = 'agency-inspector';

export const isOfAgency = ({ signer }: Pick<UnitFacts, 'signer'>): boolean => signer.roles.includes(AGENCY);

export const agencyOnly = (facts: UnitFacts): Guard =>
  isOfAgency(facts) ? null : { code: 'not-allowed', actor: facts.signer.actor, needs: AGENCY };

/** Roles that may decide against what the rules or another person have said. */
const DECIDERS = ['quality-manager', 'inspector', 'administrator'];

export const decidersOnly = ({ signer }: UnitFacts): Guard =>
  signer.roles.some((role) => DECIDERS.includes(role))
    ? null
    : { code: 'not-allowed', actor: signer.actor, needs: 'quality-manager' };

export const managerOnly = ({ signer }: UnitFacts): Guard =>
  signer.roles.includes('quality-manager')
    ? null
    : { code: 'not-allowed', actor: signer.actor, needs: 'quality-manager' };
