import { accept, reject } from '@libs/kernel';
import type { ChangeOrder } from './unit.change.commands';
import { opened } from './unit.consequences';
import { decidersOnly } from './unit.defects';
import type { UnitFacts } from './unit.facts';
import { known } from './unit.judging';
import type { UnitDecision } from './unit.rejections';
import { changesUnder } from './unit.revision';
import type { RevisionChanges } from './unit.revision.events';
import type { Unit } from './unit.state';

const NOTHING: RevisionChanges = { due: [], notDue: [], changed: [], findings: [] };

/** What was built by the old order stays on record; what the new one does not accept of it is held. */
export const changeOrder = ({ data }: ChangeOrder, unit: Unit, facts: UnitFacts): UnitDecision => {
  const { serial, design } = data;
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial });
  if (unit.stage === 'shipped') return reject({ code: 'section-not-on-line', serial });
  const unfit = decidersOnly(facts);
  if (unfit !== null) return reject(unfit);
  if (sameDesign(unit, design)) return accept();

  const changes = changesFor(unit, facts);
  return accept(
    {
      type: 'OrderChanged',
      data: {
        serial: unit.serial,
        design,
        ...changes,
        ...(data.note === undefined ? {} : { note: data.note }),
      },
      ...(facts.applying === undefined
        ? {}
        : { revision: facts.applying.plan.revision, planDigest: facts.applying.plan.digest }),
    },
    ...opened(
      unit,
      {
        serial: unit.serial,
        findings: changes.findings,
        foundAt: unit.station,
        crewOf: (operation) => known(unit, facts).work[operation]?.crew ?? null,
      },
      { idBase: facts.idBase, before: 1 },
    ),
  );
};

const sameDesign = ({ design: before }: Unit, design: Unit['design']): boolean =>
  Object.keys({ ...before, ...design }).every((attribute) => before[attribute] === design[attribute]);

/** Before it enters the line nothing is judged, and nothing changes but the order. */
const changesFor = (unit: Unit, facts: UnitFacts): RevisionChanges => {
  const { plan, applying } = facts;
  if (plan === null || applying === undefined) return NOTHING;
  return changesUnder(unit, { from: plan, to: applying.plan }, known(unit, facts), applying);
};
