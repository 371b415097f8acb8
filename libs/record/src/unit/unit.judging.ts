import type { CompiledPlan, Entry, Finding, WorkState } from '@libs/judge';
import { judgeWork } from '@libs/judge';
import type { UnitFacts } from './unit.facts';
import { entryOf, isGrave } from './unit.findings';
import type { Unit } from './unit.state';

/** A home at its site is judged by what its sections have proven too. */
export const known = (unit: Unit, { ofSections }: UnitFacts): WorkState =>
  ofSections === null
    ? unit
    : {
        work: { ...ofSections.work, ...unit.work },
        defects: [...ofSections.defects, ...unit.defects],
        holds: [...ofSections.holds, ...unit.holds],
      };

/**
 * What an entry made earlier has to say today of another operation. Only that is asked, because lots and
 * instruments are not judged twice.
 */
export const saysOfOther = (
  unit: Unit,
  entry: string,
  other: string,
  { plan, facts }: { readonly plan: CompiledPlan; readonly facts: UnitFacts },
): readonly Finding[] => {
  const asEntered = enteredEarlier(unit, entry, facts);
  if (asEntered === null) return [];

  return judgeWork(plan, known(unit, facts), asEntered).filter(
    (finding) => isGrave(finding) && finding.operation === other && entryOf(finding) === entry,
  );
};

const enteredEarlier = (unit: Unit, operation: string, { signer, station }: UnitFacts): Entry | null => {
  const done = unit.work[operation];
  if (done === undefined) return null;

  const { proof, except, values, occurredAt, actor, crew } = done;
  const lots: Entry['lots'] = [];
  const signedBy = { ...signer, actor, crew };
  return {
    operation,
    proof,
    except,
    values,
    lots,
    instrument: null,
    photos: [],
    signer: signedBy,
    station,
    occurredAt,
  };
};
