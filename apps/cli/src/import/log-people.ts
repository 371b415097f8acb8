import { createHash } from 'node:crypto';
import type { Plant, Sender } from '@libs/plant';

/**
 * People of a log become people of the plant: the record holds opaque ids, their names are sealed. A name the plant
 * knows already keeps its id, so that a second log of the same crew speaks of the same people.
 */
export const enrollPeople = async (
  plant: Plant,
  names: readonly string[],
  digest: string,
  sender: (part: number) => Sender,
): Promise<ReadonlyMap<string, string>> => {
  const known = new Map((await plant.people()).map(({ name, person }) => [name, person]));
  for (const [index, name] of names.entries()) {
    if (known.has(name)) continue;
    const person = personId(digest, index);
    await plant.enroll({ person, name, roles: ['station-lead'], crew: null, stations: [] }, sender(index));
    known.set(name, person);
  }
  return known;
};

/** From the file and the person's place in it, never from the name: an id that could be guessed back is a name. */
const personId = (digest: string, index: number): string =>
  `p-${createHash('sha256').update(`${digest} person ${index}`).digest('hex').slice(0, 12)}`;
