import type { AnswerOf } from '@libs/contracts';
import type { Access, Holder, Plant, NewPerson } from '@libs/plant';
import type { Who } from './who';

type Me = AnswerOf<'me'>;

/** The way in: who stands behind a secret, with the roles the ledger gives them now. */
export type Door = {
  readonly access: Access;
  readonly whoIs: (secret: string) => Promise<Who | undefined>;
  /** Someone was enrolled or left: roles are read anew. */
  readonly peopleChanged: () => void;
};

export const openDoor = (access: Access, plant: Pick<Plant, 'people'>): Door => {
  let people: Promise<ReadonlyMap<string, NewPerson>> | undefined;
  const enrolled = (): Promise<ReadonlyMap<string, NewPerson>> => {
    people ??= plant.people().then((all) => new Map(all.map((person) => [person.person, person])));
    people.catch(() => {
      people = undefined;
    });
    return people;
  };

  return {
    access,
    whoIs: async (secret) => {
      const holder = await access.whoIs(secret);
      if (holder === undefined) return undefined;

      const me =
        holder.role === null ? personal((await enrolled()).get(holder.actor)) : machine(holder, holder.role);
      return me && { me, assurance: holder.kind, secret };
    },
    peopleChanged: () => {
      people = undefined;
    },
  };
};

const machine = ({ actor, name }: Holder, role: string): Me => ({
  actor,
  name,
  roles: [role],
  crew: null,
  stations: [],
});

/** Someone who left the plant is no longer enrolled, and so is nobody here. */
const personal = (person: NewPerson | undefined): Me | undefined =>
  person && {
    actor: person.person,
    name: person.name,
    roles: [...person.roles],
    crew: person.crew,
    stations: [...person.stations],
  };
