import type { AnswerOf, BodyOf, PlantTelling } from '@libs/contracts';
import type { RecordedValue } from '@libs/judge';
import type { Assurance } from '@libs/kernel';
import type { PacketHome } from '@libs/packet';
import type { RulebookFiles, RulebookProblem } from '@libs/rulebook';
import type { Observable } from 'rxjs';
import type { AuditSample, SampleWish } from './audit/sample';
import type { Packet } from './packets/packet';
import type { RulebookDesk } from './revisions/desk';
import type { PlantProof } from './proof';

/** Who sends, and under which idempotency key. */
export type Sender = {
  readonly key: string;
  readonly actor: string;
  readonly assurance: Assurance;
  /** Of a token or a machine, which is enrolled nowhere. A person's roles stand in the ledger. */
  readonly roles?: readonly string[];
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

/** Questions; undefined: nothing is known under that serial. */
export type Questions = {
  readonly plant: () => Promise<AnswerOf<'plant'>>;
  readonly line: (stages: readonly string[]) => Promise<AnswerOf<'line'>>;
  readonly section: (serial: string, at: string | null) => Promise<AnswerOf<'section'> | undefined>;
  /** Null: too few homes were labelled on these days. */
  readonly auditSample: (wish: SampleWish) => Promise<AuditSample | null>;
  readonly homes: (search: string) => Promise<AnswerOf<'homes'>>;
  /** By the home's serial or any of its sections'. */
  readonly history: (serial: string) => Promise<AnswerOf<'history'> | undefined>;
  readonly yieldByStation: (span: Span) => Promise<AnswerOf<'yield'>>;
  readonly yieldTrend: (station: string, span: Span) => Promise<AnswerOf<'yieldTrend'>>;
  readonly signals: (span: Span) => Promise<AnswerOf<'signals'>>;
  readonly stationChart: (station: string, span: Span) => Promise<AnswerOf<'stationChart'>>;
  readonly passages: (station: string, which: string, span: Span) => Promise<AnswerOf<'passages'>>;
  readonly defectCounts: (
    by: string,
    only: { readonly station: string | null; readonly class: string },
    span: Span,
  ) => Promise<AnswerOf<'defectCounts'>>;
  readonly defects: (
    only: { readonly [filter: string]: string | null },
    span: Span,
  ) => Promise<AnswerOf<'defects'>>;
  readonly openDefects: (ofClass: string | null) => Promise<AnswerOf<'openDefects'>>;
  readonly holds: () => Promise<AnswerOf<'holds'>>;
  readonly agency: () => Promise<AnswerOf<'agency'>>;
  /** Of a month, `2026-03`. */
  readonly agencyReport: (month: string) => Promise<AnswerOf<'agencyReport'>>;
  readonly releases: () => Promise<AnswerOf<'releases'>>;
  readonly sectionRelease: (serial: string) => Promise<AnswerOf<'sectionRelease'> | undefined>;
  readonly labelLog: () => Promise<AnswerOf<'labelLog'>>;
  readonly dataPlate: (serial: string) => Promise<AnswerOf<'dataPlate'> | undefined>;
  /** `span`: instants; the operation done between them is shared too. */
  readonly sharing: (
    serial: string,
    operation: string,
    span: Span,
  ) => Promise<AnswerOf<'sharing'> | undefined>;
  readonly containments: () => Promise<AnswerOf<'containments'>>;
  readonly equipment: () => Promise<AnswerOf<'equipment'>>;
  readonly instrumentReach: (instrument: string) => Promise<AnswerOf<'instrumentReach'> | undefined>;
  readonly lotReach: (lot: string) => Promise<AnswerOf<'lotReach'> | undefined>;
};

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

/** The plant as plain functions: the one way in for the server, the command line, the seeds and the simulator. */
export type Plant = {
  readonly tell: Tellings;
  readonly asks: Questions;
  readonly proof: PlantProof;
  /** First event of a ledger. Records nothing when it is open already. */
  readonly open: (name: string, zone: string, demonstration: boolean, sender: Sender) => Promise<void>;
  readonly issueRevision: (
    files: RulebookFiles,
    effectiveFrom: string,
    sender: Sender,
    atTheMachine?: AtTheMachine,
  ) => Promise<
    | { readonly ok: true; readonly revision: number }
    | {
        readonly ok: false;
        readonly problems: readonly RulebookProblem[];
        /** The files are well, and it cannot be issued all the same. */
        readonly rejection?: { readonly code: string; readonly [field: string]: unknown };
      }
  >;
  /** The rulebook: read, changed, approved by a second person, run over history. */
  readonly rulebook: RulebookDesk;
  readonly enroll: (person: NewPerson, sender: Sender) => Promise<void>;
  /** They are enrolled no longer; what they did stays theirs. False: nobody of that id is enrolled. */
  readonly leave: (person: string, sender: Sender) => Promise<boolean>;
  /** The first calibration on record enrolls the instrument. */
  readonly calibrate: (calibration: Calibration, sender: Sender) => Promise<void>;
  /** Names in clear, where the key still exists. */
  readonly people: () => Promise<readonly NewPerson[]>;
  /** Everything after a position, then live; misses nothing and repeats nothing. */
  readonly news: (after: number) => Observable<AnswerOf<'stream'>>;
  readonly head: () => Promise<number>;
  /** A home's whole history in one ZIP, to be read and to be proven; undefined: nobody knows the serial. */
  readonly packet: (serial: string, at: number | null) => Promise<Packet | undefined>;
  /** What a packet of this home is made of, up to a position. */
  readonly packetHome: (serial: string, at: number) => Promise<PacketHome | undefined>;
  /** Whether what is told here is still recorded here, or another has taken the ledger over. */
  readonly writes: () => Promise<boolean>;
  /** Every view from the ledger anew. Reports position and head as it goes. */
  readonly rebuild: (progress: (position: number, head: number) => void) => Promise<void>;
  readonly close: () => Promise<void>;
};
