/** What a subscriber may want. Events of the record are named by type; none means every one that may leave the plant. */
export type Wants = {
  readonly events: 'all' | readonly string[];
  readonly alarms: boolean;
  readonly checkpoints: boolean;
  readonly clocks: boolean;
};

/** `gone`: the receiver said that it wants no more (HTTP 410). It stays listed until somebody ends it or tries again. */
export type SubscriptionState = 'on' | 'gone';

export type Subscription = {
  readonly id: string;
  readonly kind: 'url' | 'mail';
  readonly target: string;
  readonly wants: Wants;
  /** Of what is written for people: letters. */
  readonly language: 'en' | 'es';
  readonly madeBy: string;
  /** Milliseconds since 1970 UTC, as all times here. */
  readonly madeAt: number;
  readonly state: SubscriptionState;
  /** Everything up to here in the ledger, and of the notices, was delivered, given up, or not wanted. */
  readonly position: number;
  readonly notice: number;
  /** Tries of what is being delivered now, and in a row altogether: what is next waits as long as the last did. */
  readonly tries: number;
  readonly failures: number;
  readonly nextAt: number;
  readonly trouble: string | null;
  readonly deliveredAt: number | null;
};

/** News that is no event of the ledger: an alarm of the charts, a checkpoint, a day that is nearly due. */
export type Notice = {
  readonly seq: number;
  /** The same news has the same id, whoever noticed it and however often. */
  readonly id: string;
  readonly kind: 'alarm' | 'checkpoint' | 'clock';
  readonly subject: string;
  readonly at: string;
  /** JSON. */
  readonly data: string;
};

/** What was given up. It keeps its body and its id: sent again it is the same delivery. */
export type DeadLetter = {
  readonly id: string;
  readonly subscription: string;
  readonly message: string;
  readonly type: string;
  readonly subject: string;
  readonly body: string;
  readonly why: string;
  readonly tries: number;
  readonly at: number;
};

/** Where deliveries stand: beside the ledger, not in it, because it may all be made anew. */
export type FeedRows = {
  readonly subscriptions: () => Promise<readonly Subscription[]>;
  readonly subscription: (id: string) => Promise<Subscription | undefined>;
  readonly put: (subscription: Subscription) => Promise<void>;
  /** Only where it still is: what ended in the meantime stays ended. */
  readonly keep: (subscription: Subscription) => Promise<void>;
  readonly end: (id: string) => Promise<void>;
  /** False: it is known already. */
  readonly note: (notice: Omit<Notice, 'seq'>) => Promise<boolean>;
  readonly noticesAfter: (seq: number, limit: number) => Promise<readonly Notice[]>;
  readonly lastNotice: () => Promise<number>;
  readonly bury: (letter: DeadLetter) => Promise<void>;
  readonly letters: () => Promise<readonly DeadLetter[]>;
  readonly letter: (id: string) => Promise<DeadLetter | undefined>;
  readonly dropLetter: (id: string) => Promise<void>;
  readonly close: () => Promise<void>;
};
