import type { AlarmBudgetSet, DefectCostsSet } from './chart.events';

/** A note as it was told, and by whom. */
export type ChartNote = { readonly note: string; readonly by: string; readonly at: string };

/** A few a year: the state of a chart stays small for as long as the plant runs. */
export type ChartState = {
  readonly annotations: readonly (ChartNote & { readonly day: string })[];
  /** By their first day; the last one said of a day counts. */
  readonly baselines: readonly (ChartNote & { readonly from: string; readonly to: string })[];
  readonly acknowledged: readonly (ChartNote & { readonly day: string })[];
  /** Null: as the program has it. */
  readonly budget: AlarmBudgetSet['data'] | null;
  /** Null: nobody has said what defects cost. */
  readonly costs: DefectCostsSet['data'] | null;
};

export const bareChart: ChartState = {
  annotations: [],
  baselines: [],
  acknowledged: [],
  budget: null,
  costs: null,
};
