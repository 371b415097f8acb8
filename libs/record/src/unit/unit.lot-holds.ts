import type { Finding, Source } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { FreeFromLot, HoldForLot } from './unit.change.commands';
import { holdOf, released } from './unit.consequences';
import type { UnitFacts } from './unit.facts';
import type { UnitDecision } from './unit.rejections';
import { usedIn } from './unit.released';
import type { Unit } from './unit.state';

const PRACTICE: Source = { kind: 'practice', reference: '', row: '' };
const BUILT_IN = 'lot-not-usable';

/**
 * A lot that is in the unit already was quarantined: every operation that used it is held, until the lot is released
 * or a person decides. The record was right when it was made: nobody is charged with a nonconformance.
 */
export const holdForLot = ({ data }: HoldForLot, unit: Unit, facts: UnitFacts): UnitDecision => {
  const { lot } = data;
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });

  const operations = operationsWith(unit, lot).filter((operation) => !isHeld(unit, operation, lot));
  return accept(
    ...operations.map((operation, index) =>
      holdOf(unit.serial, findingOf(operation, lot, facts), {
        hold: `${facts.idBase}-${index}`,
        defect: null,
      }),
    ),
  );
};

const operationsWith = (unit: Unit, lot: string): readonly string[] => {
  const used = Object.entries(unit.evidence).flatMap(([operation, evidence]) => usedIn(operation, evidence));
  const all = [...unit.builtIn, ...used].filter((one) => one.lot === lot);
  return [...new Set(all.map(({ operation }) => operation))];
};

const isHeld = (unit: Unit, operation: string, lot: string): boolean =>
  unit.holds.some(
    ({ hold }) =>
      isFor(unit.raised[hold]?.finding, lot) && unit.raised[hold]?.finding.operation === operation,
  );

const isFor = (finding: Finding | undefined, lot: string): boolean =>
  finding?.rule === BUILT_IN && finding.recorded === lot;

const findingOf = (operation: string, lot: string, { plan, scanned }: UnitFacts): Finding => ({
  rule: BUILT_IN,
  grade: 'hold',
  class: 'record',
  operation,
  station: plan?.operations[operation]?.station ?? null,
  ...(scanned[0] === undefined ? {} : { required: scanned[0].kind }),
  recorded: lot,
  source: PRACTICE,
});

/** Found good after all: the holds it led to go, those that hang on a defect stay for its verification. */
export const freeFromLot = ({ data }: FreeFromLot, unit: Unit): UnitDecision => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial: data.serial });
  const free = unit.holds.filter(
    ({ hold, defect }) => defect === null && isFor(unit.raised[hold]?.finding, data.lot),
  );
  return accept(...free.map(({ hold }) => released(unit.serial, hold, 'satisfied')));
};
