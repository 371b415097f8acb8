import type {
  AlarmBudgetSet,
  BaselineSet,
  ChartAnnotated,
  DefectCostsSet,
  SignalAcknowledged,
} from './chart.events';

export type ChartCommand =
  | { readonly type: 'AnnotateChart'; readonly data: ChartAnnotated['data'] }
  | { readonly type: 'SetBaseline'; readonly data: BaselineSet['data'] }
  | { readonly type: 'AcknowledgeSignal'; readonly data: SignalAcknowledged['data'] }
  | { readonly type: 'SetAlarmBudget'; readonly data: AlarmBudgetSet['data'] }
  | { readonly type: 'SetDefectCosts'; readonly data: DefectCostsSet['data'] };
