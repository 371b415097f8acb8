import type { CompiledPlan, WorkState } from '@libs/judge';
import { HOME, SECTION } from '@libs/record';
import type { Unit } from '@libs/record';
import { workOfSections } from '../home-plan';
import type { Asked } from './asked';

/** A section or a home as a screen asks for it: with its home, its sisters, and all that is known of its work. */
export type Subject = {
  readonly unit: Unit;
  readonly home: Unit;
  readonly sections: readonly Unit[];
  /** The plan it is judged by; before it has started, the one it would be judged by now. Null: no rulebook fits. */
  readonly plan: CompiledPlan | null;
  readonly state: WorkState;
};

/** By a section's serial or a home's; undefined: nothing is known under it. */
export const subjectOf = async (serial: string, asked: Asked): Promise<Subject | undefined> => {
  const { ledger } = asked;
  const section = await ledger.state(SECTION, serial);
  const home = await ledger.state(HOME, section.kind === 'unknown' ? serial : section.home);
  const unit = section.kind === 'unknown' ? home : section;
  if (unit.kind === 'unknown') return undefined;

  const sections: Unit[] = [];
  for (const each of unit.sections) sections.push(await ledger.state(SECTION, each));
  const known = sections.filter(({ kind }) => kind !== 'unknown');
  return unit.kind === 'section' ? ofSection(unit, home, known, asked) : ofHome(unit, known, asked);
};

/** What is done at the site is recorded in the home's own stream, and stands for each of its sections. */
const ofSection = (unit: Unit, home: Unit, sections: readonly Unit[], asked: Asked): Subject => ({
  unit,
  home,
  sections,
  plan: planOf(unit, asked),
  state: {
    work: { ...home.work, ...unit.work },
    defects: [...unit.defects, ...home.defects],
    holds: [...unit.holds, ...home.holds],
  },
});

const ofHome = (home: Unit, sections: readonly Unit[], asked: Asked): Subject => {
  const planned = sections.flatMap((unit) => {
    const plan = planOf(unit, asked);
    return plan === null ? [] : [{ unit, plan }];
  });
  const inPlant = workOfSections(planned);
  return {
    unit: home,
    home,
    sections,
    plan:
      home.revision === null
        ? null
        : asked.plans.deviated(
            asked.plans.planForHome(
              home.revision,
              home.design,
              sections.map(({ design }) => design),
            ),
            home.deviations,
          ),
    state: {
      work: { ...inPlant.work, ...home.work },
      defects: [...home.defects, ...inPlant.defects],
      holds: [...home.holds, ...inPlant.holds],
    },
  };
};

const planOf = (unit: Unit, { plans, clock }: Asked): CompiledPlan | null => {
  if (unit.revision !== null) {
    return plans.deviated(plans.planFor(unit.revision, unit.design), unit.deviations);
  }

  const current = plans.inForce(new Date(clock()).toISOString()) ?? plans.current();
  const answer = current === null ? null : plans.tryPlanFor(current.revision, unit.design);
  return answer?.ok === true ? answer.plan : null;
};
