import type { Qualification } from '@libs/judge';
import type { Role } from './person.events';

/** What a decision needs of whoever signs. The name is sealed, and nobody decides by it. */
export type Person = {
  readonly enrolled: boolean;
  readonly roles: readonly Role[];
  readonly crew: string | null;
  readonly qualifications: readonly Qualification[];
};

export const unknownPerson: Person = { enrolled: false, roles: [], crew: null, qualifications: [] };
