import { assertNever } from '@libs/kernel';
import type { RecordedDeterminationEvent } from './determination.events';
import type { Determination } from './determination.state';

export const evolve = (state: Determination, event: RecordedDeterminationEvent): Determination =>
  ofDeciding(state, event) ?? ofRemedy(state, event);

type OfRemedy = Extract<
  RecordedDeterminationEvent,
  {
    readonly type:
      'PlanSubmitted' | 'PlanApproved' | 'HomeRemedied' | 'CompletionReported' | 'GovernmentNotified';
  }
>;

const isOfRemedy = (event: RecordedDeterminationEvent): event is OfRemedy =>
  ['PlanSubmitted', 'PlanApproved', 'HomeRemedied', 'CompletionReported', 'GovernmentNotified'].includes(
    event.type,
  );

const ofDeciding = (state: Determination, event: RecordedDeterminationEvent): Determination | null => {
  if (isOfRemedy(event)) return null;
  const signed = { by: event.actor, at: event.occurredAt };
  switch (event.type) {
    case 'DeterminationOpened':
      return { ...state, opened: { ...event.data, ...signed } };
    case 'InitiallyDetermined':
      return { ...state, initial: [...state.initial, { ...event.data, ...signed }] };
    case 'ClassDetermined':
      return { ...state, class: [...state.class, { ...event.data, ...signed }] };
    case 'AgencyPositionTaken':
      return { ...state, agency: [...state.agency, { ...event.data, ...signed }] };
    case 'CountingRuleSet':
      return { ...state, counting: event.data };
    default:
      return assertNever(event);
  }
};

const ofRemedy = (state: Determination, event: RecordedDeterminationEvent): Determination => {
  if (!isOfRemedy(event)) return state;
  const signed = { by: event.actor, at: event.occurredAt };
  switch (event.type) {
    case 'PlanSubmitted':
      return { ...state, submitted: { ...event.data, ...signed } };
    case 'PlanApproved':
      return { ...state, approved: { ...event.data, ...signed } };
    case 'HomeRemedied':
      return { ...state, remedies: [...state.remedies, { ...event.data, ...signed }] };
    case 'GovernmentNotified':
      return { ...state, notified: { ...event.data, ...signed } };
    case 'CompletionReported':
      return { ...state, reported: { ...event.data, ...signed } };
    default:
      return assertNever(event);
  }
};
