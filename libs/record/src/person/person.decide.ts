import { accept, assertNever, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type { PersonCommand } from './person.commands';
import type { PersonEvent, RecordedPersonEvent } from './person.events';
import { unknownPerson } from './person.state';
import type { Person } from './person.state';

export type PersonRejection = { readonly code: 'person-unknown'; readonly person: string };
/** Nothing else in the plant bears on who works in it. */
export type PersonFacts = { readonly [none: string]: never };

/** Enrolling again is how roles, crew and name change. */
export const decide = (command: PersonCommand, person: Person): Decision<PersonEvent, PersonRejection> => {
  switch (command.type) {
    case 'EnrollPerson':
      return accept({ type: 'PersonEnrolled', data: command.data });
    case 'RecordLeaving':
      return person.enrolled
        ? accept({ type: 'PersonLeft', data: command.data })
        : reject({ code: 'person-unknown', person: command.data.person });
    default:
      return assertNever(command);
  }
};

export const evolve = (_person: Person, event: RecordedPersonEvent): Person => {
  switch (event.type) {
    case 'PersonEnrolled':
      return { enrolled: true, roles: event.data.roles, crew: event.data.crew };
    case 'PersonLeft':
      return unknownPerson;
    default:
      return assertNever(event);
  }
};

export const PERSON: StreamKind<PersonCommand, Person, PersonEvent, PersonRejection, PersonFacts> = {
  name: 'person',
  initial: unknownPerson,
  decide,
  evolve,
};
