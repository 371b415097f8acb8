import type { AnswerOf } from '@libs/contracts';
import type { Access, Doorstep, Holder, Plant, NewPerson } from '@libs/plant';
import { sessionIn, tabletIn } from './session-cookie';
import { signatureDesk } from './signature-desk';
import type { SignatureDesk } from './signature-desk';
import type { Who } from './who';

type Me = AnswerOf<'me'>;

/** The way in: who stands behind a secret, with the roles the ledger gives them now. */
export type Door = {
  readonly access: Access;
  readonly signatures: SignatureDesk;
  readonly whoIs: (secret: string) => Promise<Who | undefined>;
  /** Whether a PIN counts where this request comes from, and on which tablet. */
  readonly stepOf: (cookies: string | undefined) => Promise<Doorstep>;
  readonly sessionIn: (cookies: string | undefined) => string | undefined;
  /** Somebody was enrolled or has left: the roster is read anew. */
  readonly rosterChanged: () => void;
};

/** Roles taken from someone stop working after this long at the latest; until then no request copies the roster. */
const ROSTER_TRUSTED_FOR_MS = 1_000;

export type DoorSetting = { readonly secureCookies: boolean; readonly pinsAnywhere: boolean };

export const openDoor = (
  access: Access,
  plant: Pick<Plant, 'people'>,
  { secureCookies, pinsAnywhere }: DoorSetting,
): Door => {
  const enrolled = rememberFor(ROSTER_TRUSTED_FOR_MS, async () => byId(await plant.people()));

  return {
    access,
    signatures: signatureDesk(),
    sessionIn: (cookies) => sessionIn(cookies, secureCookies),
    stepOf: async (cookies) => {
      const secret = tabletIn(cookies, secureCookies);
      const tablet = secret === undefined ? undefined : await access.tabletOf(secret);
      return { tablet: tablet?.tablet ?? null, pinCounts: pinsAnywhere || tablet !== undefined };
    },
    rosterChanged: enrolled.forget,
    whoIs: async (secret) => {
      const holder = await access.whoIs(secret);
      if (holder === undefined) return undefined;

      const me =
        holder.role === null
          ? personal((await enrolled.get()).get(holder.actor))
          : machine(holder, holder.role);
      const { kind, scopes, tablet } = holder;
      return me && { me, assurance: kind, secret, scopes, tablet };
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
