import { placesToLookAt } from '@libs/judge';
import type { CompiledPlan, OperationStanding, PlannedOperation, PlannedValue, WorkState } from '@libs/judge';
import type { AnswerOf } from './routes';
import { requirementSays, unitSays } from './words';
import type { Names } from './words';

export type OperationCardOf = AnswerOf<'section'>['operations'][number];

export type Shown = {
  readonly plan: CompiledPlan;
  readonly state: WorkState;
  readonly serial: string;
  /** A person's name in clear. */
  readonly person: (actor: string) => string;
  readonly text: Names['text'];
};

/**
 * One operation as the station screen shows it, made by the server, and by a tablet without a network: what is asked, what it waits for, what is on record.
 */
export const operationCard = (
  operation: PlannedOperation,
  standing: OperationStanding,
  { plan, state, serial, person, text }: Shown,
): OperationCardOf => ({
  operation: operation.id,
  name: operation.name,
  station: operation.station,
  crew: operation.crew,
  entry: operation.entry,
  mark: standing.standing,
  except: [...standing.except],
  cover: operation.hides.length > 0,
  gate: operation.gate,
  label: operation.label,
  hides: operation.hides.map(({ operation: hidden, hidden: how }) => ({
    operation: hidden,
    name: nameIn(plan, hidden),
    hidden: how,
  })),
  waitsFor: standing.waitsFor.map((needed) => ({
    operation: needed,
    name: nameIn(plan, needed),
    station: plan.operations[needed]?.station ?? '',
  })),
  photo: operation.photo,
  instrument: operation.instrument,
  caution: operation.caution,
  ...builtBy(operation),
  values: operation.values.map((value) => ({
    ...valueToRecord(value, text),
    ...lookAt(value, operation.id, { plan, serial }),
  })),
  done: doneOf(operation.id, state, person),
});

const nameIn = (plan: CompiledPlan, operation: string): OperationCardOf['name'] =>
  plan.operations[operation]?.name ?? { en: operation, es: operation };

const builtBy = ({ manual, drawings = [] }: PlannedOperation): Pick<OperationCardOf, 'builtBy'> => {
  const references = [...(manual === undefined ? [] : [manual]), ...drawings];
  return references.length === 0 ? {} : { builtBy: references.join(' · ') };
};

type Value = OperationCardOf['values'][number];

/** `curb side (2), rear`: so many spots at each. */
const lookAt = (
  value: PlannedValue,
  operation: string,
  { plan, serial }: { readonly plan: CompiledPlan; readonly serial: string },
): Pick<Value, 'lookAt'> => {
  const drawn =
    value.worstOf > 1
      ? placesToLookAt(serial, operation, value)
      : (value.places ?? []).map((place) => ({ place, spots: 1 }));
  if (drawn.length === 0) return {};
  const says = (language: 'en' | 'es'): string =>
    drawn
      .map(({ place, spots }) => {
        const name = plan.places.find(({ id }) => id === place)?.name[language] ?? place;
        return spots === 1 ? name : `${name} (${spots})`;
      })
      .join(', ');
  return { lookAt: { en: says('en'), es: says('es') } };
};

const valueToRecord = (value: PlannedValue, text: Names['text']): OperationCardOf['values'][number] => ({
  characteristic: value.characteristic,
  label: value.label,
  kind: value.kind,
  unit: value.unit,
  unitSymbol: value.unit === null ? null : unitSays(value.unit).en,
  required: value.required,
  requiredSays: requirementSays(value.required, value.unit, value.kind, text),
  test: value.test,
  ...(value.choices === undefined ? {} : { choices: [...value.choices] }),
  from: value.from,
  asked: value.asked,
  worstOf: value.worstOf,
  grade: value.grade,
  source: value.source,
});

const doneOf = (operation: string, { work }: WorkState, person: Shown['person']): OperationCardOf['done'] => {
  const done = work[operation];
  if (done === undefined) return null;
  return {
    position: done.position,
    by: person(done.actor),
    crew: done.crew,
    at: done.occurredAt,
    proof: done.proof,
    values: done.values.map(({ characteristic, value, unit }) => ({ characteristic, value, unit })),
    missing: [...done.missing],
  };
};
