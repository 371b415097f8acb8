import type { AnswerOf } from '@libs/contracts';
import type { Access, Holder, Plant, NewPerson } from '@libs/plant';
import type { Who } from './who';

type Me = AnswerOf<'me'>;

/** The way in: who stands behind a secret, with the roles the ledger gives them now. */
export type Door = {
  readonly access: Access;
  readonly whoIs: (secret: string) => Promise<Who | undefined>;
  /** Somebody was enrolled or has left: the roster is read anew. */
  readonly rosterChanged: () => void;
};

/** Roles taken from someone stop working after this long at the latest; until then no request copies the roster. */
const ROSTER_TRUSTED_FOR_MS = 1_000;

export const openDoor = (access: Access, plant: Pick<Plant, 'people'>): Door => {
  const enrolled = rememberFor(ROSTER_TRUSTED_FOR_MS, async () => byId(await plant.people()));

  return {
    access,
    rosterChanged: enrolled.forget,
    whoIs: async (secret) => {
      const holder = await access.whoIs(secret);
      if (holder === undefined) return undefined;

      const me =
        holder.role === null
          ? personal((await enrolled.get()).get(holder.actor))
          : machine(holder, holder.role);
      return me && { me, assurance: holder.kind, secret };
    },
  };
};

const byId = (people: readonly NewPerson[]): ReadonlyMap<string, NewPerson> =>
  new Map(people.map((person) => [person.person, person]));

type Remembered<A> = { readonly get: () => Promise<A>; readonly forget: () => void };

const rememberFor = <A>(ms: number, read: () => Promise<A>): Remembered<A> => {
  let last: { readonly answer: Promise<A>; readonly until: number } | undefined;
  return {
    get: () => {
      const now = Date.now();
      if (last === undefined || now >= last.until) last = { answer: read(), until: now + ms };
      return last.answer;
    },
    forget: () => {
      last = undefined;
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
