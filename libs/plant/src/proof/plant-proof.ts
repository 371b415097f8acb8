import type { Envelope } from '@libs/kernel';
import type { Checkpoints, LedgerTree, SigningKeys } from '@libs/ledger';
import type { PacketFiles } from '@libs/proof';

/** What proofs are made from. */
export type Proving = {
  readonly tree: LedgerTree;
  readonly checkpoints: Checkpoints;
  readonly keys: SigningKeys;
};

/** A checkpoint as it is given to people outside. */
export type MadeCheckpoint = {
  /** Events in the ledger: the position of the last one. */
  readonly size: number;
  /** The signed note: what is published. */
  readonly note: string;
  /** Of the key that signed it, eight hex digits; short enough to be printed and compared by eye. */
  readonly key: string;
  /** SHA-256 of the note, hex. */
  readonly sha256: string;
};

/** A home's history and its proofs, up to a position. */
export type Evidence = {
  readonly home: string;
  readonly sections: readonly string[];
  readonly position: number;
  /** SHA-256 of `evidence/manifest.json`: the same whenever the same is asked for. */
  readonly digest: string;
  readonly checkpoint: MadeCheckpoint;
  /** The events in it, as recorded, by position. */
  readonly events: readonly Envelope[];
  /** Streams that are in it from their first event to their last at that position. */
  readonly streams: readonly string[];
  /** Named `evidence/...`. */
  readonly files: PacketFiles;
};

export type HomeListed = {
  readonly serial: string;
  readonly model: string;
  readonly sections: readonly string[];
  readonly orderedAt: string;
};

/** What the plant can prove to people outside. */
export type PlantProof = {
  /** Signs how the ledger stands, or stood when it was so long. The same size always gives the same checkpoint. */
  readonly checkpoint: (size?: number) => Promise<MadeCheckpoint>;
  /** Undefined: nothing was recorded under that serial by then. `at`: up to this position; null: to the end. */
  readonly evidenceOf: (serial: string, at: number | null) => Promise<Evidence | undefined>;
  /** The evidence and all that makes it readable as one packet: listed, and the list signed. */
  readonly packetOf: (evidence: Evidence, others: PacketFiles) => Promise<PacketFiles>;
  /** The same as one ZIP: the same bytes for the same files. */
  readonly zipOf: (evidence: Evidence, others: PacketFiles) => Promise<Uint8Array>;
  /** Proof that the ledger at `to` begins with the one at `from`: a line for a packet's `consistency.jsonl`. */
  readonly bridge: (from: number, to: number) => Promise<string>;
  /** `NAME+ID+KEY`: what is published of the key. */
  readonly publicKey: () => string;
  /** Signs with a new key from now on; both keys say so in the note that is returned. */
  readonly changeKey: () => Promise<string>;
  /** Every home of the ledger, in the order they were ordered. */
  readonly homes: () => Promise<readonly HomeListed[]>;
};

/** The ledger is not what it was when an earlier checkpoint was signed. Nothing more is signed for it. */
export class LedgerContradicts extends Error {
  constructor(size: number) {
    super(
      `The ledger's first ${size} events are not those a checkpoint was signed for. Nothing is signed. ` +
        'Run `studbook verify --ledger` to see what was changed.',
    );
    this.name = 'LedgerContradicts';
  }
}

export class NothingToSign extends Error {
  constructor(size: number, head: number) {
    super(
      head === 0
        ? 'The ledger has no event yet: there is nothing to sign.'
        : `The ledger has ${head} events; it cannot be signed at ${size}.`,
    );
    this.name = 'NothingToSign';
  }
}
