import type { Role } from '@libs/record';
import { CLAIM, PERSON } from '@libs/record';
import { partOf } from '@libs/ledger';
import type { Plant } from './plant';
import type { NewPerson, Sender } from './told';
import { PERSON_NAME } from './roster';
import { arrivalOf, askLedger, claimOfComplainant } from './telling';
import type { Workings } from './workings';

const ROLES: readonly Role[] = [
  'station-lead',
  'quality-manager',
  'inspector',
  'agency-inspector',
  'auditor',
  'administrator',
  'machine',
];

const roleOf = (name: string): Role => {
  const role = ROLES.find((known) => known === name);
  if (role !== undefined) return role;
  throw new Error(`${name} is no role: ${ROLES.join(', ')}`);
};

export const enroll =
  (workings: Workings): Plant['enroll'] =>
  async (newPerson: NewPerson, sender: Sender) => {
    const { person, name, crew, stations } = newPerson;
    const roles = newPerson.roles.map(roleOf);
    const place = { stream: `person/${person}`, field: PERSON_NAME };
    const sealed = workings.sealing.seal(person, place, name);
    const arrival = arrivalOf(workings, {
      route: 'enroll',
      body: { ...newPerson, via: 'import' as const },
      sender,
    });

    const outcome = await askLedger(workings, arrival, [
      partOf({
        kind: PERSON,
        id: person,
        command: { type: 'EnrollPerson', data: { person, name: sealed, roles, crew, stations } },
        facts: () => ({}),
      }),
    ]);
    if (!outcome.ok) throw new Error(`${person} was not enrolled: ${outcome.rejection.code}`);
    for (const event of outcome.events) workings.roster.learn(event);
  };

/**
 * First the event, then the key: after a crash in between, whoever opens the plant next destroys it. So does whoever opens
 * it with keys restored from a backup. Undone by nothing.
 */
export const erase =
  (workings: Workings): Plant['erase'] =>
  async (person, sender) => {
    if (!(await isSomebody(workings, person))) return false;
    const arrival = arrivalOf(workings, { route: 'erase', body: { person, via: 'tablet' as const }, sender });
    const outcome = await askLedger(workings, arrival, [
      partOf({
        kind: PERSON,
        id: person,
        command: { type: 'ErasePerson', data: { person } },
        facts: () => ({}),
      }),
    ]);
    if (!outcome.ok) return false;
    for (const event of outcome.events) workings.roster.learn(event);
    forgetErased(workings);
    return true;
  };

/** Whom the ledger says to be erased has no key any more, whatever backup the keys came from. */
export const forgetErased = ({ roster, sealing }: Pick<Workings, 'roster' | 'sealing'>): void => {
  for (const person of roster.erased()) if (sealing.keeps(person)) sealing.forget(person);
};

/** Of the roster, now or once, or whoever complained in a claim. */
const isSomebody = async ({ roster, ledger }: Workings, person: string): Promise<boolean> => {
  if (roster.knows(person)) return true;
  const claim = claimOfComplainant(person);
  return claim !== undefined && (await ledger.state(CLAIM, claim)).logged !== null;
};

export const leave =
  (workings: Workings): Plant['leave'] =>
  async (person, sender) => {
    const arrival = arrivalOf(workings, { route: 'leave', body: { person, via: 'tablet' as const }, sender });
    const outcome = await askLedger(workings, arrival, [
      partOf({
        kind: PERSON,
        id: person,
        command: { type: 'RecordLeaving', data: { person } },
        facts: () => ({}),
      }),
    ]);
    if (!outcome.ok) return false;
    for (const event of outcome.events) workings.roster.learn(event);
    return true;
  };
