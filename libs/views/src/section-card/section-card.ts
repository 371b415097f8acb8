import type { FindingClass, OpenHold } from '@libs/judge';
import type { JsonObject } from '@libs/kernel';
import type { Unit } from '@libs/record';

/** What lists of sections and homes show of one of them, in codes. Words come from the catalogues on reading. */
export type SectionCard = {
  readonly kind: 'section' | 'home';
  readonly serial: string;
  readonly home: string;
  readonly model: string;
  readonly role: string | null;
  readonly sections: readonly string[];
  readonly stage: Unit['stage'];
  readonly station: string | null;
  readonly since: string | null;
  /** Reason code while it is pulled off the line. */
  readonly pulledFor: string | null;
  readonly revision: number | null;
  readonly label: string | null;
  /** When the first label went on: the date of manufacture (24 CFR 3282.7(h)). A replacement does not change it. */
  readonly labelledAt: string | null;
  /** Stages at which the inspection agency saw it. */
  readonly seen: readonly string[];
  readonly holds: readonly OpenHold[];
  /** Open defects, by id. */
  readonly defects: { readonly [defect: string]: FindingClass };
  /** Operations of stations already left, still open. */
  readonly open: readonly string[];
  readonly last: LastEvent;
};

/** Enough to say in words what happened last. */
export type LastEvent = {
  readonly position: number;
  readonly type: string;
  readonly occurredAt: string;
  /** The event's own fields: as they came with it, or, once stored, the JSON text of those that are said. */
  readonly data: JsonObject | string;
};

export const blankCard = (stream: string, serial: string): SectionCard => ({
  kind: stream.startsWith('home/') ? 'home' : 'section',
  serial,
  home: serial,
  model: '',
  role: null,
  sections: [],
  stage: 'ordered',
  station: null,
  since: null,
  pulledFor: null,
  revision: null,
  label: null,
  labelledAt: null,
  seen: [],
  holds: [],
  defects: {},
  open: [],
  last: { position: 0, type: '', occurredAt: '', data: '{}' },
});
