import { changeSays, findingSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import type { CompiledPlan, Design, ValueKind } from '@libs/judge';
import { SECTION, changesUnder } from '@libs/record';
import type { ChangedRequirement, RevisionChanges, Unit } from '@libs/record';
import { namesOf } from '../names';
import type { Names } from '../names';
import { inOneLine } from '../plans';
import type { Workings } from '../workings';
import { recordingsBook, usedBy } from './recordings';
import type { RecordingsBook } from './recordings';
import { now } from './which';
import type { Target } from './which';

export type SectionChanges = AnswerOf<'examination'>['sections'][number];

/** What a rulebook changes for each of these sections; those for which nothing is different are among them. */
export const changesOfSections = async (
  workings: Workings,
  target: Target,
  serials: readonly string[],
  designOf: (unit: Unit) => Design = ({ design }) => design,
): Promise<readonly SectionChanges[]> => {
  const book = recordingsBook(workings);
  const changes: SectionChanges[] = [];
  for (const serial of serials) {
    const unit = await workings.ledger.state(SECTION, serial);
    if (unit.kind !== 'section') continue;
    changes.push(await changesOf(workings, target, { unit, design: designOf(unit) }, book));
  }
  return changes;
};

const changesOf = async (
  workings: Workings,
  target: Target,
  { unit, design }: { readonly unit: Unit; readonly design: Design },
  book: RecordingsBook,
): Promise<SectionChanges> => {
  const resolved = target.plans.tryPlanFor(target.revision, design);
  if (!resolved.ok) {
    return { ...identity(unit), ...NOTHING, unfit: resolved.problems.map(inOneLine).join('; ') };
  }
  const { lots, instruments } = usedBy(unit);
  await book.lookUp(lots, instruments);
  const to = target.plans.deviated(resolved.plan, unit.deviations);
  const from = planNow(workings, unit) ?? to;
  const changes = changesUnder(unit, { from, to }, unit, book.at);
  return { ...identity(unit), unfit: null, ...inWords(changes, resolved.plan, namesOf(target.rulebook)) };
};

/** The plan it is judged by; one that has not started, by the one it would be judged by now. */
const planNow = ({ plans, clock }: Workings, unit: Unit): CompiledPlan | null => {
  if (unit.revision !== null) {
    return plans.deviated(plans.planFor(unit.revision, unit.design), unit.deviations);
  }
  const known = plans.inForce(now({ clock })) ?? plans.current();
  const answer = known === null ? null : plans.tryPlanFor(known.revision, unit.design);
  return answer?.ok === true ? answer.plan : null;
};

const NOTHING = { due: [], notDue: [], changed: [], findings: [] };

const identity = ({
  serial,
  home,
  station,
  revision,
}: Unit): Pick<SectionChanges, 'serial' | 'home' | 'station' | 'revision'> => ({
  serial,
  home,
  station,
  revision,
});

type InWords = Pick<SectionChanges, 'due' | 'notDue' | 'changed' | 'findings'>;

export const inWords = (
  changes: RevisionChanges,
  plan: Pick<CompiledPlan, 'operations'>,
  names: Names,
): InWords => ({
  due: changes.due.map((id) => ({ id, name: names.operation(id) })),
  notDue: changes.notDue.map((id) => ({ id, name: names.operation(id) })),
  changed: changes.changed.map((changed) => ({
    operation: changed.operation,
    says: requirementSays(changed, kindOf(plan, changed), names),
  })),
  findings: changes.findings.map(({ places, ...finding }) => ({
    ...finding,
    ...(places === undefined ? {} : { places: [...places] }),
    says: findingSays({ ...finding, ...(places === undefined ? {} : { places }) }, names),
  })),
});

const kindOf = (
  plan: Pick<CompiledPlan, 'operations'>,
  { operation, characteristic }: ChangedRequirement,
): ValueKind =>
  plan.operations[operation]?.values.find((value) => value.characteristic === characteristic)?.kind ??
  'measure';

const requirementSays = (
  { operation, characteristic, before, after, unit }: ChangedRequirement,
  kind: ValueKind,
  names: Names,
): SectionChanges['changed'][number]['says'] => {
  const cell = (text: string | null) =>
    text === null ? null : ({ is: 'cell', cell: text, unit, kind } as const);
  return changeSays({
    what: 'value',
    change: before === null ? 'added' : after === null ? 'dropped' : 'changed',
    subject: names.operation(operation),
    of: names.characteristic(operation, characteristic),
    conditions: [],
    aspects: [{ aspect: 'required', before: cell(before), after: cell(after) }],
  });
};

/** Something is different for it. */
export const isTouched = ({ unfit, due, notDue, changed, findings }: SectionChanges): boolean =>
  unfit !== null || [due, notDue, changed, findings].some((list) => list.length > 0);
