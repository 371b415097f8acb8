import type { Recorded } from '@libs/kernel';

/** What people say of a station's charts: one stream a station, so that a decision on its work never reads them. */
export type ChartEvent = ChartAnnotated | BaselineSet | SignalAcknowledged | AlarmBudgetSet | DefectCostsSet;

/** "New nail gun, 3 March": what a reader of the chart should know of that day. */
export type ChartAnnotated = {
  readonly type: 'ChartAnnotated';
  readonly data: {
    readonly station: string;
    /** `2026-03-03`. */
    readonly day: string;
    /** Sealed. */
    readonly note: string;
  };
};
/** From this day on the chart's limits come from these days: a new phase. Revised by another, with its reason. */
export type BaselineSet = {
  readonly type: 'BaselineSet';
  readonly data: {
    readonly station: string;
    readonly from: string;
    readonly to: string;
    /** Why; sealed. */
    readonly note: string;
  };
};
/** A signal looked into, and what was behind it. */
export type SignalAcknowledged = {
  readonly type: 'SignalAcknowledged';
  readonly data: {
    readonly station: string;
    /** Day of the section that raised it. */
    readonly day: string;
    /** The cause; sealed. */
    readonly note: string;
  };
};
/** False alarms a month the plant will bear, over all charts together, and the run rules it reads its charts by. */
export type AlarmBudgetSet = {
  readonly type: 'AlarmBudgetSet';
  readonly data: {
    /** Decimal text: "0.25". */
    readonly falseAlarmsPerMonth: string;
    readonly rules: ChartRules;
  };
};
/** What a defect of a component costs the plant to put right, as the plant reckons it. Replaces what was said before. */
export type DefectCostsSet = {
  readonly type: 'DefectCostsSet';
  readonly data: {
    /** ISO 4217. */
    readonly currency: string;
    /** Decimal texts. */
    readonly costs: readonly { readonly component: string; readonly cost: string }[];
  };
};
export type ChartRules = 'few-counts' | 'western-electric' | 'nelson';
export type RecordedChartEvent = Recorded<ChartEvent>;
