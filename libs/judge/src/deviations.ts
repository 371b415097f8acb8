import type { CompiledPlan, PlannedOperation, PlannedValue, Source, Test } from './plan';

/** What is approved for one home in place of what its plan asks: another value, or another kind of lot. */
export type Deviation = {
  readonly deviation: string;
  readonly operation: string;
  /** The approval: a letter, by its number and date. */
  readonly reference: string;
  readonly allows: AllowedValue | AllowedLot;
};
export type AllowedValue = {
  readonly what: 'value';
  readonly characteristic: string;
  /** As a table has it: `<= 26`. */
  readonly required: string;
  readonly test: Test;
};
export type AllowedLot = { readonly what: 'lot'; readonly kind: string; readonly substitute: string };

/** The plan with what is approved for this home; of two approvals for one thing the later holds. */
export const withDeviations = (
  plan: CompiledPlan,
  deviations: readonly Deviation[],
  digestOf: (plan: Omit<CompiledPlan, 'digest'>) => string,
): CompiledPlan => {
  const operations = { ...plan.operations };
  for (const deviation of deviations) {
    const operation = operations[deviation.operation];
    if (operation !== undefined) operations[deviation.operation] = deviated(operation, deviation);
  }
  const { digest: _digest, ...rest } = plan;
  const changed = { ...rest, operations };
  return { ...changed, digest: digestOf(changed) };
};

const deviated = (operation: PlannedOperation, { allows, ...approval }: Deviation): PlannedOperation =>
  allows.what === 'lot'
    ? { ...operation, substitutes: substituted(operation, allows) }
    : {
        ...operation,
        values: operation.values.map((value) =>
          value.characteristic === allows.characteristic ? allowed(value, allows, approval) : value,
        ),
      };

const substituted = (
  { substitutes = {} }: PlannedOperation,
  { kind, substitute }: AllowedLot,
): PlannedOperation['substitutes'] => ({
  ...substitutes,
  [kind]: [...new Set([...(substitutes[kind] ?? []), substitute])],
});

const allowed = (
  value: PlannedValue,
  { required, test }: AllowedValue,
  { deviation, reference }: Pick<Deviation, 'deviation' | 'reference'>,
): PlannedValue => {
  const source: Source = { kind: 'design', reference, row: `deviation ${deviation}` };
  return { ...value, required, test, source };
};
