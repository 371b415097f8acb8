import type { ObservationMade, VisitMade } from './agency.events';

/** A few visits a week and a few observations each: ten years of them are a short list. */
export type Agency = {
  readonly visits: readonly Visit[];
  readonly observations: readonly Observation[];
};
export type Visit = Omit<VisitMade['data'], 'note'> & { readonly by: string };
export type Observation = ObservationMade['data'] & {
  readonly at: string;
  readonly by: string;
  /** Answers in turn, sealed, and who gave them. */
  readonly answers: readonly { readonly note: string; readonly by: string; readonly at: string }[];
  readonly standing: 'open' | 'answered' | 'closed';
};

export const noVisits: Agency = { visits: [], observations: [] };
