import type { Envelope } from '@libs/kernel';
import type { Ledger } from '@libs/ledger';
import type { ViewReader } from '@libs/views';
import type { Gathering } from '../claims/gathering';
import type { NameBook } from '../names';
import type { Plans } from '../plans';

/** What questions are answered from. */
export type Asked = {
  readonly ledger: Pick<Ledger, 'id' | 'head' | 'state' | 'ofStreams'>;
  readonly views: ViewReader;
  readonly plans: Plans;
  readonly names: NameBook;
  /** A sealed text in clear; null where its key is gone. */
  readonly unsealed: (
    text: string,
    place: { readonly stream: string; readonly field: string },
  ) => string | null;
  /** Streams of a kind, in the order of their names. */
  readonly streamsOf: (kind: string) => Promise<readonly string[]>;
  /** Events that name something; some may only seem to. */
  readonly mentioning: (text: string) => Promise<readonly Envelope[]>;
  /** What a trace is made of, up to the last event. */
  readonly gathering: Gathering;
  /** Lots in quarantine. */
  readonly quarantined: () => Promise<
    readonly { readonly lot: string; readonly reason: string; readonly since: string }[]
  >;
  /** Milliseconds since 1970, UTC: for the day that a lot or a span is judged by, never for a figure. */
  readonly clock: () => number;
};
