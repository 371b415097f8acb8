import type { PersonEnrolled } from './person.events';

export type PersonCommand =
  | { readonly type: 'EnrollPerson'; readonly data: PersonEnrolled['data'] }
  | { readonly type: 'RecordLeaving'; readonly data: { readonly person: string } };
