import type {
  AgencyPositionTaken,
  ClassDetermined,
  CompletionReported,
  CountingRuleSet,
  DeterminationOpened,
  GovernmentNotified,
  HomeRemedied,
  InitiallyDetermined,
  PlanApproved,
  PlanSubmitted,
} from './determination.events';

type Signed<D> = D & { readonly by: string; readonly at: string };

export type Determination = {
  readonly opened: Signed<DeterminationOpened['data']> | null;
  /** In turn: the last counts, and the earlier ones stay in the file. */
  readonly initial: readonly Signed<InitiallyDetermined['data']>[];
  readonly class: readonly Signed<ClassDetermined['data']>[];
  readonly agency: readonly Signed<AgencyPositionTaken['data']>[];
  readonly notified: Signed<GovernmentNotified['data']> | null;
  readonly submitted: Signed<PlanSubmitted['data']> | null;
  readonly approved: Signed<PlanApproved['data']> | null;
  readonly remedies: readonly Signed<HomeRemedied['data']>[];
  readonly reported: Signed<CompletionReported['data']> | null;
  /** In the stream that holds the rule for all files. */
  readonly counting: CountingRuleSet['data'] | null;
};

export const noDetermination: Determination = {
  opened: null,
  initial: [],
  class: [],
  agency: [],
  notified: null,
  submitted: null,
  approved: null,
  remedies: [],
  reported: null,
  counting: null,
};
