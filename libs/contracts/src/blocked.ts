import { judgeAsking } from '@libs/judge';
import type { CompiledPlan, Finding, Words, WorkState } from '@libs/judge';
import { findingSays } from './words';
import type { Names } from './words';

/**
 * One sentence: what stands in the way of the work of this station. What the station itself has still to do first
 * is its own order of work and blocks nobody; a hold or a defect blocks whoever it is charged to.
 */
export const blockedBy = (plan: CompiledPlan, state: WorkState, at: string, names: Names): Words | null => {
  for (const id of plan.order) {
    if (plan.operations[id]?.station !== at || state.work[id] !== undefined) continue;
    const inTheWay = judgeAsking(plan, state, { operation: id, except: [] }).find((finding) =>
      blocks(finding, at),
    );
    if (inTheWay !== undefined) return findingSays(inTheWay, names);
  }
  return null;
};

const blocks = ({ grade, rule, station }: Finding, at: string): boolean =>
  grade === 'refuse' && (station !== at || !OWN_ORDER.has(rule));

const OWN_ORDER: ReadonlySet<string> = new Set(['cover-hides-unproven', 'required-work-unproven']);
