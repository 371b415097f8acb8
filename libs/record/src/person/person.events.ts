import type { Recorded } from '@libs/kernel';

export type Role =
  | 'station-lead'
  | 'quality-manager'
  | 'inspector'
  | 'agency-inspector'
  | 'auditor'
  | 'administrator'
  | 'machine';

export type PersonEvent = PersonEnrolled | PersonLeft;

/** `name` is sealed. `roles` say what they may do, `crews` whom they may stand in for. */
export type PersonEnrolled = {
  readonly type: 'PersonEnrolled';
  readonly data: {
    readonly person: string;
    readonly name: string;
    readonly roles: readonly Role[];
    readonly crew: string | null;
    readonly stations: readonly string[];
  };
};
export type PersonLeft = { readonly type: 'PersonLeft'; readonly data: { readonly person: string } };
export type RecordedPersonEvent = Recorded<PersonEvent>;
