import type { AnswerOf, BodyOf, PlantTelling } from '@libs/contracts';
import type { RecordedValue } from '@libs/judge';
import type { Assurance, Signature } from '@libs/kernel';

/** Who sends, and under which idempotency key. */
export type Sender = {
  readonly key: string;
  readonly actor: string;
  readonly assurance: Assurance;
  /** Of a token or a machine, which is enrolled nowhere. A person's roles stand in the ledger. */
  readonly roles?: readonly string[];
  /** The tablet it was sent from, where the plant knows it. */
  readonly tablet?: string | null;
  readonly signature?: Signature;
};

/** Told: the answer, or why it cannot belong to the record. `code` is kebab-case; `pointer` names the field. */
export type Told<A> =
  | { readonly ok: true; readonly answer: A }
  | {
      readonly ok: false;
      readonly rejection: {
        readonly code: string;
        readonly pointer?: string;
        readonly [field: string]: unknown;
      };
    };

/** One function for each telling route, under the route's own name. `params` are the path's. */
export type Tellings = {
  readonly [N in PlantTelling]: (
    body: BodyOf<N>,
    sender: Sender,
    params: { readonly [name: string]: string },
  ) => Promise<Told<AnswerOf<N>>>;
};

export type Span = { readonly from: string | null; readonly to: string | null };

export type Calibration = {
  readonly instrument: string;
  readonly kind: string;
  readonly properties: readonly RecordedValue[];
  /** Last day it may be used; null: needs no calibration. */
  readonly dueOn: string | null;
  readonly inTolerance: boolean;
};

export type NewPerson = {
  readonly person: string;
  /** In clear; sealed before it is recorded. */
  readonly name: string;
  readonly roles: readonly string[];
  readonly crew: string | null;
  readonly stations: readonly string[];
};

/** Who answers for a revision that is issued at the machine, and what the inspection agency approved of it. */
export type AtTheMachine = {
  readonly approvedBy?: string;
  readonly agency?: { readonly reference: string; readonly approvedOn: string };
};
