import type { Envelope } from '@libs/kernel';
import { typeOf } from '@libs/ledger';
import type { Ledger, Sealing, Sql } from '@libs/ledger';
import type { PersonEnrolled, PersonEvent } from '@libs/record';
import type { NewPerson } from './told';

/** Who is enrolled, names in clear as long as their key exists. */
export type Roster = {
  readonly people: () => readonly NewPerson[];
  /** The opaque id where no name is known. */
  readonly nameOf: (person: string) => string;
  /** Whether somebody of that id is enrolled or ever was. */
  readonly knows: (person: string) => boolean;
  readonly erased: () => readonly string[];
  /** Takes in what was recorded of a person. */
  readonly learn: (event: Envelope) => void;
};

export const PERSON_NAME = 'name';

type Enrolled = PersonEnrolled['data'];

export const rosterOf = (sealing: Sealing): Roster => {
  const enrolled = new Map<string, Enrolled>();
  /** Also of those who left: history still speaks of them. */
  const sealedNames = new Map<string, string>();

  const erased = new Set<string>();

  const nameOf = (person: string): string => {
    const sealed = sealedNames.get(person);
    if (sealed === undefined) return person;
    return sealing.unseal(sealed, { stream: `person/${person}`, field: PERSON_NAME }) ?? person;
  };

  return {
    people: () =>
      [...enrolled.values()].map(({ person, roles, crew, stations }) => ({
        person,
        name: nameOf(person),
        roles,
        crew,
        stations,
      })),
    nameOf,
    knows: (person) => sealedNames.has(person),
    erased: () => [...erased],
    learn: (event) => {
      const known = personEvent(event);
      if (known.type === 'PersonLeft') {
        enrolled.delete(known.data.person);
        return;
      }
      if (known.type === 'PersonErased') {
        enrolled.delete(known.data.person);
        erased.add(known.data.person);
        return;
      }
      if (known.type !== 'PersonEnrolled') return;
      enrolled.set(known.data.person, known.data);
      sealedNames.set(known.data.person, known.data.name);
    },
  };
};

/** In the streams of people stand events of people and nothing else: their own decider wrote them. */
const personEvent = ({ schema, data }: Envelope): PersonEvent =>
  ({ type: typeOf(schema), data }) as unknown as PersonEvent;

/** Every person the ledger knows of. */
export const readPeople = async (ledger: Ledger, reader: Sql, learn: Roster['learn']): Promise<void> => {
  // '0' follows '/' in every character set there is, so that this is all streams that begin with `person/`.
  const streams = await reader.query<{ readonly stream: string }>(
    `SELECT stream FROM event WHERE stream > 'person/' AND stream < 'person0' AND version = 1`,
  );
  if (streams.length === 0) return;
  for (const event of await ledger.ofStreams(streams.map(({ stream }) => stream))) learn(event);
};
