import type { PlannedOperation } from '@libs/judge';
import { accept, reject } from '@libs/kernel';
import type { AffixLabel } from './unit.commands';
import type { ReplaceLabel } from './unit.release.commands';
import { agencyOnly } from './unit.defects';
import { entered } from './unit.entering';
import type { Told } from './unit.entering';
import type { UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';
import { isGrave } from './unit.findings';
import { judgingOf } from './unit.guards';
import type { Judging } from './unit.guards';
import { lotsFor } from './unit.lots';
import type { UnitDecision } from './unit.rejections';
import { labellingOf, releaseFindings } from './unit.release';
import type { Unit } from './unit.state';

/**
 * The one telling that can be refused: a label is the maker's own word that all is proven, and it does not go on before
 * it is. What is missing is recorded, all of it; the number stays unused.
 */
export const affixLabel = ({ data }: AffixLabel, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  if (unit.label !== null) {
    return reject({ code: 'label-on-already', serial: unit.serial, number: unit.label });
  }
  const { plan } = ready.judging;
  const labelling = labellingOf(plan, unit);
  const told = labelling === undefined ? null : labelled(labelling, data.photos, facts);
  const findings = releaseFindings(unit, told, ready.judging);
  if (findings.some(isGrave)) return accept(refused(unit, data.number, findings, ready.judging));

  const affixed: UnitEvent = {
    type: 'LabelAffixed',
    data: { serial: unit.serial, number: data.number },
    revision: plan.revision,
    planDigest: plan.digest,
  };
  return told === null ? accept(affixed) : accept(affixed, ...entered(unit, told, ready.judging, 1));
};

const refused = (
  unit: Unit,
  number: string,
  findings: ReturnType<typeof releaseFindings>,
  { plan }: Judging,
): UnitEvent => ({
  type: 'LabelRefused',
  data: { serial: unit.serial, number, findings },
  revision: plan.revision,
  planDigest: plan.digest,
});

/** With the label goes the plan's own operation of affixing it, judged like any other. */
export const labelled = (labelling: PlannedOperation, photos: readonly string[], facts: UnitFacts): Told => ({
  operation: labelling.id,
  proof: 'signed',
  except: [],
  values: [],
  lots: lotsFor(labelling, facts),
  instrument: null,
  photos,
  crew: null,
});

/** The agency confirms that the home still complies and gives out another number. */
export const replaceLabel = ({ data }: ReplaceLabel, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const { label } = unit;
  if (label === null) return reject({ code: 'label-not-on', serial: unit.serial });
  const unfit = agencyOnly(facts);
  if (unfit !== null) return reject(unfit);
  const findings = releaseFindings(unit, null, ready.judging);
  if (findings.some(isGrave)) return accept(refused(unit, data.number, findings, ready.judging));

  const { photos: _photos, ...rest } = data;
  return accept({ type: 'LabelReplaced', data: { ...rest, replaces: label } });
};
