import { textIn } from './event-data';
import type { Sayings } from './saying';
import { say } from './say';

/** People, revisions and the plant itself. Names of people are sealed, so none is said. */
export const plantEvents: Sayings = {
  PersonEnrolled: () => say('event.PersonEnrolled'),
  PersonLeft: () => say('event.PersonLeft'),
  PersonErased: () => say('event.PersonErased'),
  RevisionIssued: (data) =>
    say('event.RevisionIssued', {
      revision: textIn(data, 'revision'),
      day: textIn(data, 'effectiveFrom').slice(0, 10),
    }),
  PlantOpened: (data) => say('event.PlantOpened', { name: textIn(data, 'name') }),
};
