import type { ObservationAnswered, ObservationClosed, ObservationMade, VisitMade } from './agency.events';

export type AgencyCommand =
  | { readonly type: 'MakeVisit'; readonly data: VisitMade['data'] }
  | { readonly type: 'MakeObservation'; readonly data: ObservationMade['data'] }
  | { readonly type: 'AnswerObservation'; readonly data: ObservationAnswered['data'] }
  | { readonly type: 'CloseObservation'; readonly data: ObservationClosed['data'] };
