import type { CompiledPlan, WorkState } from '@libs/judge';
import type { RecordedUnitEvent, RetroFound, Recordings, Unit } from '@libs/record';
import { retroChecker, unknownUnit } from '@libs/record';
import { workOfSections } from '../home-plan';

/** A home with its sections, and the plans to judge them by. */
export type Family = {
  readonly home: { readonly serial: string; readonly plan: CompiledPlan };
  readonly sections: readonly { readonly serial: string; readonly plan: CompiledPlan }[];
};

/** Its whole history judged again, by position. Pure: events in, what would not have been accepted out. */
export const retroFamily = (
  { home, sections }: Family,
  events: readonly RecordedUnitEvent[],
  recordings: Recordings,
): readonly RetroFound[] => {
  const ofSections = sections.map(({ serial, plan }) => ({
    serial,
    plan,
    checker: retroChecker(plan, recordings),
  }));
  const checkers = new Map(ofSections.map(({ serial, checker }) => [`section/${serial}`, checker]));
  const ofHome = retroChecker(home.plan, recordings);
  let known: WorkState | null = null;
  /** Put together anew only after something was entered on a section. */
  const inPlant = (): WorkState =>
    (known ??= workOfSections(
      ofSections.map(({ plan, checker }) => ({ plan, unit: { ...BLANK, work: checker.state.work } })),
    ));

  return events.flatMap((event) => {
    const section = checkers.get(event.stream);
    if (section === undefined) return ofHome.take(event, inPlant) ?? [];
    known = null;
    return section.take(event) ?? [];
  });
};

const BLANK: Unit = { ...unknownUnit, kind: 'section' };
