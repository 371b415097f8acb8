import type { AnswerOf } from '@libs/contracts';
import type { Card } from './cards';

/** What stands open beside the list: one thing at a time, never over it. */
export type Panel = PlainPanel | CardPanel;
export type PlainPanel = {
  readonly show: 'nothing' | 'sign-off' | 'defect' | 'hold' | 'pull' | 'lot' | 'kept';
};
export type CardPanel =
  /** `then`: the operation to ask for again once this is recorded. */
  | { readonly show: 'record'; readonly card: Card; readonly then: Card | null }
  | { readonly show: 'label' | 'correct' | 'wrong-serial' | 'laid-open'; readonly card: Card }
  | { readonly show: 'verdict'; readonly card: Card; readonly answer: AnswerOf<'asking'> }
  | {
      readonly show: 'told';
      readonly says: string;
      readonly answer: Told;
      readonly card: Card | null;
      readonly then: Card | null;
      readonly undo: Undo | null;
      /** Holds open before: what is gone since then went with what was told. */
      readonly holdsBefore: readonly string[];
    };

/** A telling's answer; lots and the like have neither findings nor holds. */
export type Told = {
  readonly position: number;
  readonly findings: AnswerOf<'work'>['findings'];
  readonly holds: AnswerOf<'work'>['holds'];
};

/** Defects known before: what is new since then can be withdrawn. Nothing is ever taken out of the record. */
export type Undo = { readonly defectsBefore: readonly string[] };

export const NOTHING: Panel = { show: 'nothing' };

/** Where work on an operation is recorded: a label has a form of its own. */
export const recordPanel = (card: Card, then: Card | null = null): Panel =>
  card.label ? { show: 'label', card } : { show: 'record', card, then };
