import { laneyPChart, laneyUChart, pChart, uChart } from './attribute-charts';
import type { Subgroup } from './attribute-charts';
import type { ControlChart } from './control-chart';

/** A stretch of a chart with limits of its own: before and after a change that a person named. */
export type Phase = {
  /** First point of the phase, from 0; it lasts to the next phase or the end. */
  readonly from: number;
  /** Points that its limits come from: from `from` up to here, itself excluded. Limits then hold for what follows. */
  readonly baselineTo: number;
  /** Points of the baseline that a person left out because the cause is known. */
  readonly leftOut?: readonly number[];
};

export const PHASED_KINDS = { p: pChart, 'p-prime': laneyPChart, u: uChart, 'u-prime': laneyUChart } as const;
export type PhasedKind = keyof typeof PHASED_KINDS;

/** One chart a phase. Points are never left out by the program: whether a cause is known is a person's to say. */
export const chartPhases = (
  kind: PhasedKind,
  subgroups: readonly Subgroup[],
  phases: readonly Phase[],
  width: number,
): readonly ControlChart[] =>
  phases.map(({ from, baselineTo, leftOut = [] }, at) => {
    const part = subgroups.slice(from, phases[at + 1]?.from);
    const baseline = part.flatMap((_, index) =>
      index + from < baselineTo && !leftOut.includes(index + from) ? [index] : [],
    );
    const options = baseline.length === 0 ? { width } : { width, baseline };
    return kind === 'p-prime' || kind === 'u-prime'
      ? PHASED_KINDS[kind](part, { ...options, neverNarrower: true })
      : PHASED_KINDS[kind](part, options);
  });
