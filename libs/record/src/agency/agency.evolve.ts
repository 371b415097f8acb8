import { assertNever } from '@libs/kernel';
import type { RecordedAgencyEvent } from './agency.events';
import type { Agency, Observation } from './agency.state';

export const evolve = (agency: Agency, event: RecordedAgencyEvent): Agency => {
  switch (event.type) {
    case 'VisitMade': {
      const { note: _note, ...visit } = event.data;
      return { ...agency, visits: [...agency.visits, { ...visit, by: event.actor }] };
    }
    case 'ObservationMade':
      return {
        ...agency,
        observations: [
          ...agency.observations,
          { ...event.data, at: event.occurredAt, by: event.actor, answers: [], standing: 'open' },
        ],
      };
    case 'ObservationAnswered': {
      const answer = { note: event.data.note, by: event.actor, at: event.occurredAt };
      return changed(agency, event.data.observation, (observation) => ({
        ...observation,
        answers: [...observation.answers, answer],
        standing: 'answered',
      }));
    }
    case 'ObservationClosed': {
      const { observation, accepted, dueOn } = event.data;
      return changed(agency, observation, (one) =>
        accepted ? { ...one, standing: 'closed' } : { ...one, standing: 'open', dueOn },
      );
    }
    default:
      return assertNever(event);
  }
};

const changed = (agency: Agency, id: string, to: (one: Observation) => Observation): Agency => ({
  ...agency,
  observations: agency.observations.map((one) => (one.observation === id ? to(one) : one)),
});
