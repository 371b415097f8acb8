import type { PersonEnrolled, PersonQualified, QualificationEnded } from './person.events';

export type PersonCommand =
  | { readonly type: 'EnrollPerson'; readonly data: PersonEnrolled['data'] }
  | { readonly type: 'Qualify'; readonly data: PersonQualified['data'] }
  | { readonly type: 'EndQualification'; readonly data: QualificationEnded['data'] }
  | { readonly type: 'RecordLeaving'; readonly data: { readonly person: string } }
  | { readonly type: 'ErasePerson'; readonly data: { readonly person: string } };
