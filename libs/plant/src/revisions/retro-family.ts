import type { CompiledPlan, Design, Deviation, WorkState } from '@libs/judge';
import type { RecordedUnitEvent, RetroChecker, RetroFound, Recordings, Unit } from '@libs/record';
import { retroChecker, unknownUnit } from '@libs/record';
import { workOfSections } from '../home-plan';
import type { Plans } from '../plans';
import type { Target } from './which';

/** A home or one of its sections as it was ordered, with every deviation that was approved for it. */
type Ordered = {
  readonly serial: string;
  readonly design: Design;
  readonly deviations: readonly Deviation[];
};
/** A home with its sections. */
export type Family = { readonly home: Ordered; readonly sections: readonly Ordered[] };
type Judge = Pick<Target, 'revision'> & { readonly plans: Plans };

/** What was ordered, and the deviations: approved later than the work, they hold for it all the same. */
export const familyIn = (home: string, events: readonly RecordedUnitEvent[]): Family => {
  const deviations = new Map<string, Deviation[]>();
  const ordered: Ordered[] = [];
  for (const event of events) {
    if (event.type === 'HomeOrdered') ordered.unshift(orderedAs(event.data.home, event.data.design));
    if (event.type === 'SectionOrdered') ordered.push(orderedAs(event.data.serial, event.data.design));
    if (event.type !== 'DeviationApproved') continue;
    const { serial, deviation } = event.data;
    deviations.set(serial, [...(deviations.get(serial) ?? []), deviation]);
  }
  const all = ordered.map((one) => ({ ...one, deviations: deviations.get(one.serial) ?? NONE }));
  const [first = orderedAs(home, {}), ...sections] = all;
  return { home: first, sections };
};

const NONE: readonly Deviation[] = [];
const orderedAs = (serial: string, design: Design): Ordered => ({ serial, design, deviations: NONE });

/** Every design its plans are asked for: as ordered, and as changed on the line. */
export const designsIn = (
  { home, sections }: Family,
  events: readonly RecordedUnitEvent[],
): readonly Design[] => [
  ...[home, ...sections].map(({ design }) => design),
  ...events.flatMap((event) => (event.type === 'OrderChanged' ? [event.data.design] : [])),
];

/** Its whole history judged again, by position. Pure: events in, what would not have been accepted out. */
export const retroFamily = (
  family: Family,
  events: readonly RecordedUnitEvent[],
  recordings: Recordings,
  judge: Judge,
): readonly RetroFound[] => {
  const ofSections = family.sections.map((one) => standing(one, planOfSection(judge, one), recordings));
  const byStream = new Map(ofSections.map((one) => [`section/${one.serial}`, one]));
  const ofHome = standing(family.home, planOfHome(judge, family.home, ofSections), recordings);
  let known: WorkState | null = null;
  /** Put together anew only after something was entered on a section. */
  const inPlant = (): WorkState =>
    (known ??= workOfSections(
      ofSections.map(({ plan, checker }) => ({ plan, unit: { ...BLANK, work: checker.state.work } })),
    ));
  const reorder = (one: Standing, design: Design): void => {
    one.design = design;
    if (one !== ofHome) judgeBy(one, planOfSection(judge, one));
    judgeBy(ofHome, planOfHome(judge, ofHome, ofSections));
    known = null;
  };

  return events.flatMap((event) => {
    const section = byStream.get(event.stream);
    if (event.type === 'OrderChanged') reorder(section ?? ofHome, event.data.design);
    if (section === undefined) return ofHome.checker.take(event, inPlant) ?? [];
    known = null;
    return section.checker.take(event) ?? [];
  });
};

type Standing = {
  readonly serial: string;
  readonly deviations: readonly Deviation[];
  readonly checker: RetroChecker;
  design: Design;
  plan: CompiledPlan;
};

const standing = (one: Ordered, plan: CompiledPlan, recordings: Recordings): Standing => ({
  ...one,
  plan,
  checker: retroChecker(plan, recordings),
});

const judgeBy = (one: Standing, plan: CompiledPlan): void => {
  one.plan = plan;
  one.checker.judgeBy(plan);
};

const planOfSection = (
  { plans, revision }: Judge,
  { design, deviations }: Pick<Ordered, 'design' | 'deviations'>,
): CompiledPlan => plans.deviated(plans.planFor(revision, design), deviations);

const planOfHome = (
  { plans, revision }: Judge,
  { design, deviations }: Pick<Ordered, 'design' | 'deviations'>,
  sections: readonly { readonly design: Design }[],
): CompiledPlan => {
  // Plans of homes are kept by the very object of the home's design: a copy, so that changed sections are seen.
  const own = { ...design };
  const designs = sections.map((one) => one.design);
  return plans.deviated(plans.planForHome(revision, own, designs), deviations);
};

const BLANK: Unit = { ...unknownUnit, kind: 'section' };
