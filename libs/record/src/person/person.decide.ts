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
      return ofEnrolled(person, { type: 'PersonLeft', data: command.data });
    case 'ErasePerson':
      // Also of somebody who left long ago: whether anybody of that id was ever here, the plant asks before.
      return accept({ type: 'PersonErased', data: command.data });
    case 'Qualify':
      return ofEnrolled(person, { type: 'PersonQualified', data: command.data });
    case 'EndQualification':
      return person.qualifications.some(({ token }) => token === command.data.token)
        ? accept({ type: 'QualificationEnded', data: command.data })
        : ofEnrolled(person);
    default:
      return assertNever(command);
  }
};

const ofEnrolled = (
  { enrolled }: Person,
  ...events: readonly PersonEvent[]
): Decision<PersonEvent, PersonRejection> => {
  const [person = ''] = events.map(({ data }) => data.person);
  return enrolled ? accept(...events) : reject({ code: 'person-unknown', person });
};

/** Said again, a qualification has a new last day. */
const without = ({ qualifications }: Person, token: string): Person['qualifications'] =>
  qualifications.filter((one) => one.token !== token);

export const evolve = (person: Person, event: RecordedPersonEvent): Person => {
  switch (event.type) {
    case 'PersonEnrolled':
      return { ...person, enrolled: true, roles: event.data.roles, crew: event.data.crew };
    case 'PersonLeft':
    case 'PersonErased':
      return unknownPerson;
    case 'PersonQualified': {
      const { token, until } = event.data;
      return { ...person, qualifications: [...without(person, token), { token, until }] };
    }
    case 'QualificationEnded':
      return { ...person, qualifications: without(person, event.data.token) };
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
