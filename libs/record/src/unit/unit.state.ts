import type { Design, WorkState } from '@libs/judge';

/** What later decisions need to know of a unit, and no more. */
export type Unit = WorkState & {
  readonly kind: 'unknown' | 'section' | 'home';
  readonly serial: string;
  readonly home: string;
  readonly model: string;
  readonly design: Design;
  /** All sections of the home. */
  readonly sections: readonly string[];
  readonly stage: 'ordered' | 'on-line' | 'pulled' | 'shipped';
  /** The revision it is judged by; null until it enters the line. */
  readonly revision: number | null;
  readonly station: string | null;
  readonly since: string | null;
  readonly label: string | null;
};
