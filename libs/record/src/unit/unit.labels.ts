import { accept } from '@libs/kernel';
import type { AffixLabel } from './unit.commands';
import { entered } from './unit.entering';
import type { UnitEvent } from './unit.events';
import type { UnitFacts } from './unit.facts';
import { judgingOf } from './unit.guards';
import { lotsFor } from './unit.lots';
import type { UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';

/** The label is on the wall, and with it goes the plan's own operation of affixing it, judged like any other. */
export const affixLabel = ({ data }: AffixLabel, unit: Unit, facts: UnitFacts): UnitDecision => {
  const ready = judgingOf(unit, facts, data.serial);
  if (!ready.ok) return ready;
  const { plan } = ready.judging;
  const affixed: UnitEvent = {
    type: 'LabelAffixed',
    data: { serial: unit.serial, number: data.number },
    revision: plan.revision,
    planDigest: plan.digest,
  };
  const labelling = Object.values(plan.operations).find(({ label, scope }) => label && scope === unit.kind);
  if (labelling === undefined) return accept(affixed);

  const told = {
    operation: labelling.id,
    proof: 'signed',
    except: [],
    values: [],
    lots: lotsFor(labelling, facts),
    instrument: null,
    photos: data.photos,
    crew: null,
  } as const;
  return accept(affixed, ...entered(unit, told, ready.judging, 1));
};
