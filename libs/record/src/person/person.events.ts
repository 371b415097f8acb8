import type { Recorded } from '@libs/kernel';

export type Role =
  | 'station-lead'
  | 'quality-manager'
  | 'inspector'
  | 'agency-inspector'
  | 'auditor'
  | 'administrator'
  | 'machine';

export type PersonEvent = PersonEnrolled | PersonLeft | PersonErased | PersonQualified | QualificationEnded;

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
/** The key their name and notes are sealed under is destroyed; what they did stays theirs by the opaque id. */
export type PersonErased = { readonly type: 'PersonErased'; readonly data: { readonly person: string } };
/** What somebody may sign for besides: an acting lead's crew, a badge with its last day (null: for good). */
export type PersonQualified = {
  readonly type: 'PersonQualified';
  readonly data: { readonly person: string; readonly token: string; readonly until: string | null };
};
export type QualificationEnded = {
  readonly type: 'QualificationEnded';
  readonly data: { readonly person: string; readonly token: string };
};
export type RecordedPersonEvent = Recorded<PersonEvent>;
