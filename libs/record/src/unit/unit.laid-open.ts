import type { CompiledPlan } from '@libs/judge';
import { isProven } from '@libs/judge';
import type { Unit } from './unit.state';

/** Holds on what was laid open go once all of it stands again. */
export const builtAgain = (plan: CompiledPlan, after: Unit): readonly string[] =>
  after.laidOpen
    .filter(({ operations }) => operations.every((operation) => isProven(plan, after, operation)))
    .map(({ hold }) => hold);
