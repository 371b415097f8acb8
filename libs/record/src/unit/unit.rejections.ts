import type { Decision } from '@libs/kernel';
import type { UnitEvent } from './unit.events';

/**
 * Why something cannot belong to this unit's history at all.
 * Listed in order of precedence: where several apply, the first is the answer.
 */
export type UnitRejection =
  | { readonly code: 'happens-later'; readonly occurredAt: string }
  | { readonly code: 'section-unknown'; readonly serial: string }
  | { readonly code: 'serial-already-ordered'; readonly serial: string }
  | { readonly code: 'section-already-started'; readonly serial: string }
  | { readonly code: 'no-revision-in-force' }
  | { readonly code: 'section-not-on-line'; readonly serial: string }
  | { readonly code: 'section-not-pulled'; readonly serial: string }
  | { readonly code: 'station-unknown'; readonly station: string }
  | { readonly code: 'operation-unknown'; readonly operation: string }
  | { readonly code: 'operation-not-of-station'; readonly operation: string; readonly station: string }
  | { readonly code: 'operation-signed-apart'; readonly operation: string }
  | {
      readonly code: 'operation-of-other-unit';
      readonly operation: string;
      readonly scope: 'section' | 'home';
    }
  | { readonly code: 'value-of-excepted'; readonly operation: string }
  | { readonly code: 'place-unknown'; readonly place: string }
  | { readonly code: 'characteristic-unknown'; readonly characteristic: string }
  | { readonly code: 'characteristic-not-entered'; readonly characteristic: string }
  | { readonly code: 'value-not-a-number'; readonly characteristic: string; readonly value: string }
  | { readonly code: 'value-not-a-count'; readonly characteristic: string; readonly value: string }
  | { readonly code: 'value-below-zero'; readonly characteristic: string; readonly value: string }
  | { readonly code: 'value-not-yes-or-no'; readonly characteristic: string; readonly value: string }
  | { readonly code: 'value-not-a-date'; readonly characteristic: string; readonly value: string }
  | { readonly code: 'unit-unknown'; readonly characteristic: string; readonly unit: string }
  | {
      readonly code: 'unit-of-other-kind';
      readonly characteristic: string;
      readonly unit: string | null;
      readonly asked: string | null;
    }
  | { readonly code: 'choice-unknown'; readonly characteristic: string; readonly value: string }
  | { readonly code: 'lot-unknown'; readonly lot: string }
  | { readonly code: 'instrument-unknown'; readonly instrument: string }
  | { readonly code: 'work-not-recorded'; readonly operation: string }
  | { readonly code: 'same-serial'; readonly serial: string }
  | { readonly code: 'component-unknown'; readonly component: string }
  | { readonly code: 'symptom-unknown'; readonly symptom: string }
  | { readonly code: 'reason-unknown'; readonly reason: string }
  | { readonly code: 'defect-unknown'; readonly defect: string }
  | { readonly code: 'defect-already-closed'; readonly defect: string }
  | { readonly code: 'rework-not-done'; readonly defect: string }
  | { readonly code: 'verified-by-own-hand'; readonly defect: string }
  | { readonly code: 'disposition-needed'; readonly defect: string }
  | { readonly code: 'disposition-not-needed'; readonly defect: string }
  | { readonly code: 'detail-needed'; readonly defect: string }
  | { readonly code: 'approval-needed'; readonly defect: string }
  | { readonly code: 'punch-list-empty'; readonly serial: string }
  | { readonly code: 'cover-not-recorded'; readonly operation: string }
  | { readonly code: 'red-tag-on-already'; readonly tag: string }
  | { readonly code: 'red-tag-unknown'; readonly tag: string }
  | { readonly code: 'red-tag-needs-agency'; readonly hold: string }
  | { readonly code: 'label-on-already'; readonly serial: string; readonly number: string }
  | { readonly code: 'label-not-on'; readonly serial: string }
  | { readonly code: 'hold-unknown'; readonly hold: string }
  | { readonly code: 'hold-already-released'; readonly hold: string }
  | { readonly code: 'revision-not-in-force'; readonly revision: number }
  | { readonly code: 'not-allowed'; readonly actor: string; readonly needs: string };

export type UnitDecision = Decision<UnitEvent, UnitRejection>;

/** A guard's answer: null lets pass. */
export type Guard = UnitRejection | null;
