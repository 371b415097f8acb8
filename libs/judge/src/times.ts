import type { Rational } from '@libs/kernel';
import { compare, elapsedMs, inBase } from '@libs/kernel';
import type { WorkState } from './entry';
import type { Finding } from './finding';
import type { CompiledPlan, PlannedOperation, Span, TimeRule } from './plan';

/**
 * Too soon after another operation, or too long after it. Too soon is the fault of who came too soon; a test that
 * has grown old is charged to the test, which has to be made again. What is not recorded at all is for the order
 * of work to tell.
 */
export const judgeTimes = (
  plan: CompiledPlan,
  state: WorkState,
  operation: PlannedOperation,
  occurredAt: string,
): readonly Finding[] =>
  (operation.times ?? []).flatMap((rule) => {
    const done = state.work[rule.since];
    if (done === undefined) return [];
    const elapsed = elapsedMs(done.occurredAt, occurredAt);
    return [...tooSoon(operation, rule, elapsed), ...tooLong(plan, operation, rule, elapsed)];
  });

const tooSoon = (operation: PlannedOperation, rule: TimeRule, elapsed: number): readonly Finding[] =>
  rule.atLeast === null || compareTo(elapsed, rule.atLeast) >= 0
    ? []
    : [
        {
          rule: 'too-soon-after',
          grade: rule.grade,
          class: 'nonconformance',
          operation: operation.id,
          station: operation.station,
          characteristic: rule.since,
          required: `>= ${rule.atLeast.value}`,
          recorded: shown(elapsed, rule.atLeast),
          unit: rule.atLeast.unit,
          source: rule.source,
        },
      ];

const tooLong = (
  plan: CompiledPlan,
  operation: PlannedOperation,
  rule: TimeRule,
  elapsed: number,
): readonly Finding[] =>
  rule.atMost === null || compareTo(elapsed, rule.atMost) <= 0
    ? []
    : [
        {
          rule: 'too-long-after',
          grade: rule.grade,
          class: 'record',
          operation: rule.since,
          station: plan.operations[rule.since]?.station ?? null,
          entry: operation.id,
          required: `<= ${rule.atMost.value}`,
          recorded: shown(elapsed, rule.atMost),
          unit: rule.atMost.unit,
          source: rule.source,
        },
      ];

const SECOND_MS = 1_000n;

const compareTo = (elapsed: number, { value, unit }: Span): number => {
  const limit = inBase(value, unit);
  return limit === undefined ? 0 : compare(secondsOf(elapsed), limit);
};

const secondsOf = (elapsed: number): Rational => ({ num: BigInt(elapsed), den: SECOND_MS });

/** In the rule's own unit, to a tenth, rounded down: 11.9 h is not the 12 h it asks for. */
const shown = (elapsed: number, { unit }: Span): string => {
  const one = inBase('1', unit);
  if (one === undefined || elapsed < 0) return '0';
  const tenths = (10n * BigInt(elapsed) * one.den) / (one.num * SECOND_MS);
  const fraction = tenths % 10n;
  return `${tenths / 10n}${fraction === 0n ? '' : `.${fraction}`}`;
};
