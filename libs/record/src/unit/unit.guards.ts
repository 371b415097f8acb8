import type { CompiledPlan } from '@libs/judge';
import { reject } from '@libs/kernel';
import type { Codes, UnitFacts } from './unit.facts';
import type { Guard, UnitDecision } from './unit.rejections';
import type { Unit } from './unit.state';

/** What is needed to judge at all, once the guards have passed. */
export type Judging = { readonly plan: CompiledPlan; readonly codes: Codes; readonly facts: UnitFacts };

/** A unit that is unknown or not judged by any revision yet can take no entry. */
export const judgingOf = (
  unit: Unit,
  facts: UnitFacts,
  serial: string,
): { readonly ok: true; readonly judging: Judging } | (UnitDecision & { readonly ok: false }) => {
  if (unit.kind === 'unknown') return reject({ code: 'section-unknown', serial });
  if (facts.plan === null || facts.codes === null) return reject({ code: 'section-not-on-line', serial });

  return { ok: true, judging: { plan: facts.plan, codes: facts.codes, facts } };
};

/** In the rulebook at all, and done on this kind of unit. Not of this plan is a finding, no rejection. */
export const operationGuard = (unit: Unit, operation: string, { plan, codes }: Judging): Guard => {
  if (!isOperation(codes, operation)) return { code: 'operation-unknown', operation };

  const scope = plan.operations[operation]?.scope;
  return scope === undefined || scope === unit.kind
    ? null
    : { code: 'operation-of-other-unit', operation, scope };
};

const isOperation = (codes: Codes, operation: string): boolean => codes.operations.has(operation);
