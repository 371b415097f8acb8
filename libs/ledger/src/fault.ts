/** What the caller may do about a fault. None of these says that the entry was wrong. */
export type Remedy =
  /** Nothing of it is recorded. Send the same again, same key. */
  | 'send-again'
  /** It may or may not be recorded. Send the same again, same key: the answer then tells. */
  | 'send-again-to-learn'
  /** Another writer holds this ledger. Send the same again, same key, to that one. */
  | 'send-to-the-other-writer'
  /** The key was used before for something else. Make a new key if this is a new entry. */
  | 'use-a-new-key'
  /** It can never be recorded as it is: a programmer's mistake or a value that is no JSON. */
  | 'do-not-send-again';

/** The ledger could not answer. A rejection is not a fault: that is an answer. */
export class Fault extends Error {
  constructor(
    message: string,
    readonly remedy: Remedy,
    options?: { readonly cause?: unknown },
  ) {
    super(message, options);
    this.name = new.target.name;
  }
}

export class KeyReused extends Fault {
  constructor(readonly key: string) {
    super(
      `Idempotency key ${key} was used before for other content. Make a new key if this is a new entry.`,
      'use-a-new-key',
    );
  }
}

export class WriterSuperseded extends Fault {
  constructor(ledger: string) {
    super(
      `Another writer has taken over ledger ${ledger}; this one has stepped down and recorded nothing of this. ` +
        'Send the same again, with the same key, to the writer that holds it, or open the ledger anew here.',
      'send-to-the-other-writer',
    );
  }
}

/** The ledger is held by a writer that is still alive. */
export class WriterElsewhere extends Fault {
  constructor(ledger: string, holder: string, until: string) {
    super(
      `Ledger ${ledger} is held by writer ${holder} until ${until}. Stop that writer, or wait until its lease ends.`,
      'send-to-the-other-writer',
    );
  }
}

/** A SQLite file, and the process that writes to it lives. */
export class WrittenByAnother extends Fault {
  constructor(file: string, pid: number) {
    super(
      `${file} is being written by process ${pid}, most likely the server. Stop it first (Ctrl-C where it runs); ` +
        'this would take its place. Reading with `studbook history` needs no stop.',
      'send-to-the-other-writer',
    );
  }
}

export class CommitFailed extends Fault {
  constructor(cause: unknown, remedy: 'send-again' | 'send-again-to-learn') {
    super(
      remedy === 'send-again'
        ? `Nothing of this was recorded: ${messageOf(cause)}. Send the same again, with the same key.`
        : `It is not known whether this was recorded: ${messageOf(cause)}. Send the same again, with the same key.`,
      remedy,
      { cause },
    );
  }
}

export class NotRecordable extends Fault {
  constructor(type: string, why: string) {
    super(`${type} cannot be recorded: ${why}.`, 'do-not-send-again');
  }
}

export class TooManyWaiting extends Fault {
  constructor(waiting: number) {
    super(`${waiting} entries wait to be recorded; nothing of this was. Send it again later.`, 'send-again');
  }
}

export class LedgerClosed extends Fault {
  constructor(ledger: string) {
    super(
      `Ledger ${ledger} is closed and recorded nothing of this. Send it again when it is open.`,
      'send-again',
    );
  }
}

const messageOf = (cause: unknown): string => (cause instanceof Error ? cause.message : String(cause));
