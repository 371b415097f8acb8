import type { Finding, Words } from '@libs/judge';
import type { Envelope } from '@libs/kernel';

/** What the rules said, with its words. */
export type PacketFinding = Pick<
  Finding,
  | 'grade'
  | 'class'
  | 'operation'
  | 'station'
  | 'characteristic'
  | 'required'
  | 'recorded'
  | 'unit'
  | 'places'
  | 'source'
> & { readonly rule: string; readonly says: Words };

/** One event of a home's history: as it is stored, and as people read it. */
export type PacketEvent = {
  readonly event: Envelope;
  /** UUIDv5 of ledger and position. */
  readonly id: string;
  /** Event name without its version. */
  readonly type: string;
  /** Section or home it happened to. */
  readonly serial: string;
  readonly says: Words;
  /** Name of who recorded it where it may be told, else the opaque id. */
  readonly by: string;
  readonly findings: readonly PacketFinding[];
  /** In clear where it may be told. */
  readonly note: string | null;
  readonly correctedBy: readonly number[];
};

export type PacketSection = {
  readonly serial: string;
  readonly role: string | null;
  readonly stage: string;
  readonly label: string | null;
};

/** What is said of a home besides its history: in the reader's words, because the packet outlives the rulebook. */
export type PacketNames = {
  readonly station: (id: string) => Words;
  readonly operation: (id: string) => Words;
  readonly characteristic: (operation: string, id: string) => Words;
  readonly place: (id: string) => Words;
};

/** Everything a packet is made of, read at one position of the ledger. */
export type PacketHome = {
  readonly home: string;
  readonly model: string;
  readonly plant: { readonly name: string; readonly zone: string; readonly ledger: string };
  readonly design: { readonly [attribute: string]: string };
  readonly sections: readonly PacketSection[];
  /** In the order it happened. */
  readonly events: readonly PacketEvent[];
  readonly names: PacketNames;
  /** Last position read. */
  readonly position: number;
  /** When the last event up to that position was recorded: the packet's own date, the same whenever it is made. */
  readonly asOf: string;
  /** The sentence that stands wherever a limit is shown. */
  readonly governing: Words;
};

export type PacketFile = { readonly name: string; readonly bytes: Uint8Array };
