import type { LotReceived } from './lot.events';

export type LotCommand =
  | { readonly type: 'ReceiveLot'; readonly data: LotReceived['data'] }
  /** Mounted before it was received: what the label says is all that is known of it. */
  | { readonly type: 'ReceiveLotUnlessKnown'; readonly data: LotReceived['data'] }
  | {
      readonly type: 'QuarantineLot';
      readonly data: { readonly lot: string; readonly reason: string; readonly note?: string };
    }
  | { readonly type: 'ReleaseLot'; readonly data: { readonly lot: string; readonly note?: string } };
