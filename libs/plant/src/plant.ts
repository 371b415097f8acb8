import type { AnswerOf } from '@libs/contracts';
import type { PacketHome } from '@libs/packet';
import type { RulebookFiles, RulebookProblem } from '@libs/rulebook';
import type { Observable } from 'rxjs';
import type { OpenAlarm } from './alarms';
import type { Tail } from './feed';
import type { ClaimsFile } from './claims/claims-file';
import type { ExposureWish } from './claims/exposure-file';
import type { Packet } from './packets/packet';
import type { Photos } from './photos';
import type { PlantProof } from './proof';
import type { Questions } from './questions/questions';
import type { RulebookDesk } from './revisions/desk';
import type { AtTheMachine, Calibration, NewPerson, Sender, Tellings } from './told';

/** The plant as plain functions: the one way in for the server, the command line, the seeds and the simulator. */
export type Plant = {
  readonly tell: Tellings;
  readonly asks: Questions;
  readonly proof: PlantProof;
  readonly photos: Photos;
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
  /**
   * Destroys the key of somebody's name and notes; `claim:C-1` for what the complainant of a claim said. False: nobody of
   * that id was ever here.
   */
  readonly erase: (person: string, sender: Sender) => Promise<boolean>;
  /** The first calibration on record enrolls the instrument. */
  readonly calibrate: (calibration: Calibration, sender: Sender) => Promise<void>;
  /** Names in clear, where the key still exists. */
  readonly people: () => Promise<readonly NewPerson[]>;
  /** Everything after a position, then live; misses nothing and repeats nothing. */
  readonly news: (after: number) => Observable<AnswerOf<'stream'>>;
  /** The ledger as the outgoing feed follows it. */
  readonly tail: Tail;
  /** Alarms of the charts: those open now, and each one as it opens. */
  readonly alarmsOpened: () => Observable<OpenAlarm>;
  readonly head: () => Promise<number>;
  /** A home's whole history in one ZIP, to be read and to be proven; undefined: nobody knows the serial. */
  readonly packet: (serial: string, at: number | null) => Promise<Packet | undefined>;
  /** What a packet of this home is made of, up to a position. */
  readonly packetHome: (serial: string, at: number) => Promise<PacketHome | undefined>;
  /** A CSV of complaints and claims: each row by itself, none of them twice. */
  readonly claimsFile: ClaimsFile;
  /** With the addresses of who lives there; undefined: no such cause of such a claim is known. */
  readonly exposureFile: (wish: ExposureWish) => Promise<string | undefined>;
  /** Why somebody took a file away: sealed under their own key before it goes on record, and read back. */
  readonly statedReason: {
    readonly seal: (account: string, reason: string) => string;
    readonly read: (account: string, sealed: string) => string | null;
  };
  /** Whether what is told here is still recorded here, or another has taken the ledger over. */
  readonly writes: () => Promise<boolean>;
  /** Every view from the ledger anew. Reports position and head as it goes. */
  readonly rebuild: (progress: (position: number, head: number) => void) => Promise<void>;
  readonly close: () => Promise<void>;
};
