import type { Closing } from './covers';
import { closings } from './covers';
import type { WorkState } from './entry';
import type { Finding } from './finding';
import type { CompiledPlan, Grade, PlannedOperation, Source } from './plan';
import type { Gap } from './proven';
import { gapsOf, isRecorded } from './proven';

/** What is being done or asked for, and where it is not. */
export type Doing = { readonly operation: PlannedOperation; readonly except: readonly string[] };

type Need = {
  readonly rule: 'cover-hides-unproven' | 'required-work-unproven';
  readonly grade: Grade;
  readonly source: Source;
};

/** Everything an operation needs or would hide that is not proven: each charged to what is missing. */
export const judgeOrder = (plan: CompiledPlan, state: WorkState, doing: Doing): readonly Finding[] => [
  ...closings(plan, state, doing.operation).flatMap((closing) => judgeClosing(plan, state, doing, closing)),
  ...judgeRequired(plan, state, doing),
  ...judgeExpected(plan, state, doing),
];

const judgeClosing = (
  plan: CompiledPlan,
  state: WorkState,
  { operation, except }: Doing,
  { hidden, grade, source, inSight }: Closing,
): readonly Finding[] =>
  gapsOf(plan, state, hidden, [...except, ...inSight]).map((gap) =>
    unproven(
      plan,
      { rule: 'cover-hides-unproven', grade, source },
      { missing: hidden, entry: operation.id, gap },
    ),
  );

/** What is hidden as well as required is said once, as hidden, unless hiding it is only a note. */
const judgeRequired = (
  plan: CompiledPlan,
  state: WorkState,
  { operation, except }: Doing,
): readonly Finding[] =>
  operation.requires
    .filter(({ operation: required }) => !operation.hides.some((hide) => hidesGravely(hide, required)))
    .flatMap(({ operation: required, source }) =>
      gapsOf(plan, state, required, except).map((gap) =>
        unproven(
          plan,
          { rule: 'required-work-unproven', grade: 'refuse', source },
          { missing: required, entry: operation.id, gap },
        ),
      ),
    );

const hidesGravely = (hide: PlannedOperation['hides'][number], required: string): boolean =>
  hide.operation === required && hide.hidden === 'any' && hide.grade === 'refuse';

const judgeExpected = (plan: CompiledPlan, state: WorkState, { operation }: Doing): readonly Finding[] =>
  operation.expects
    .filter((expected) => !isRecorded(plan, state, expected))
    .map((expected) => ({
      rule: 'expected-work-unproven',
      grade: 'note',
      class: 'record',
      operation: expected,
      station: plan.operations[expected]?.station ?? null,
      entry: operation.id,
      source: PRACTICE,
    }));

/** The order of soft edges is the plant's habit; nobody publishes it. */
const PRACTICE: Source = { kind: 'practice', reference: '', row: '' };

const unproven = (
  plan: CompiledPlan,
  { rule, grade, source }: Need,
  { missing, entry, gap }: { readonly missing: string; readonly entry: string; readonly gap: Gap },
): Finding => ({
  rule,
  grade,
  class: 'record',
  operation: missing,
  station: plan.operations[missing]?.station ?? null,
  entry,
  ...detailOf(gap),
  source,
});

const detailOf = (gap: Gap): Pick<Finding, 'characteristic' | 'required' | 'places'> => {
  switch (gap.lacks) {
    case 'record':
      return {};
    case 'value':
      return { characteristic: gap.characteristic, required: gap.required };
    case 'places':
      return { places: gap.places };
  }
};
