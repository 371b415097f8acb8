import { requirementSays, sourceSays } from '@libs/contracts';
import type { AnswerOf } from '@libs/contracts';
import { isProven } from '@libs/judge';
import type { CompiledPlan, PlannedOperation, PlannedValue } from '@libs/judge';
import { GOVERNING } from '../questions';
import type { Asked } from '../questions';
import { designFacts } from '../questions/design-facts';
import { subjectOf } from '../questions/subject';
import type { Subject } from '../questions/subject';
import type { Names } from '../names';

type BuildPlan = AnswerOf<'buildPlan'>;

/** What one section needs, station by station, with every required value resolved for its design. */
export const buildPlanQuestion =
  (asked: Asked) =>
  async (serial: string): Promise<BuildPlan | undefined> => {
    const subject = await subjectOf(serial, asked);
    if (subject === undefined || subject.plan === null) return undefined;

    const { unit, plan } = subject;
    const names = asked.names.ofRevision(plan.revision);
    const rulebook = asked.plans.ofRevision(plan.revision)?.rulebook;
    const role = unit.design['role'];
    return {
      serial: unit.serial,
      home: unit.home,
      model: unit.model,
      role: role === undefined ? null : names.attributeValue('role', role),
      revision: plan.revision,
      started: unit.revision !== null,
      planDigest: plan.digest,
      position: await asked.ledger.head(),
      governing: GOVERNING,
      design: designFacts(unit.design, null, rulebook, names).map(({ attribute, value, says }) => ({
        attribute,
        value,
        name: names.attribute(attribute),
        says,
        ofSection: rulebook?.body.domains.get(attribute)?.ofSection ?? false,
      })),
      stations: stationsOf(subject, plan, names),
    };
  };

const stationsOf = (subject: Subject, plan: CompiledPlan, names: Names): BuildPlan['stations'] => {
  const operations = plan.order.flatMap((id) => plan.operations[id] ?? []);
  const stations = [...new Set(operations.map(({ station }) => station))];
  return stations.map((id) => ({
    id,
    name: names.station(id),
    operations: operations
      .filter(({ station }) => station === id)
      .map((operation) => operationOf(operation, { subject, plan, names })),
  }));
};

type Shown = { readonly subject: Subject; readonly plan: CompiledPlan; readonly names: Names };
type Operation = BuildPlan['stations'][number]['operations'][number];

const operationOf = (operation: PlannedOperation, { subject, plan, names }: Shown): Operation => ({
  id: operation.id,
  name: operation.name,
  crew: names.crew(operation.crew),
  entry: operation.entry,
  caution: operation.caution,
  gate: operation.gate,
  label: operation.label,
  photo: operation.photo,
  instrument: operation.instrument === null ? null : names.instrumentKind(operation.instrument),
  lots: operation.lots.map(names.lotKind),
  lotKinds: [...operation.lots],
  substitutes: Object.entries(operation.substitutes ?? {}).map(([kind, by]) => ({
    kind: names.lotKind(kind),
    by: by.map(names.lotKind),
  })),
  requires: operation.requires.map(({ operation: id }) => names.operation(id)),
  hides: operation.hides.map(({ operation: id }) => names.operation(id)),
  signers: [...operation.signers],
  manual: operation.manual ?? null,
  drawings: [...(operation.drawings ?? [])],
  values: operation.values.map((value) => valueOf(value, names.text)),
  done: isProven(plan, subject.state, operation.id),
});

const valueOf = (value: PlannedValue, text: Names['text']): Operation['values'][number] => ({
  characteristic: value.characteristic,
  label: value.label,
  requires: requirementSays(value.required, value.unit, value.kind, text),
  required: value.required,
  from: value.from,
  grade: value.grade,
  source: sourceSays(value.source),
  worstOf: value.worstOf,
});
