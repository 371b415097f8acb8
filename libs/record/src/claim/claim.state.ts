import type { AsFoundReported, ClaimOpened, ComplaintLogged } from './claim.events';

export type Claim = {
  readonly logged: (ComplaintLogged['data'] & { readonly by: string }) | null;
  /** Why there is no failure, sealed; null while nobody said so. */
  readonly dismissed: string | null;
  readonly opened: ClaimOpened['data'] | null;
  /** The last report counts. */
  readonly asFound: AsFoundReported['data'] | null;
};

export const noClaim: Claim = { logged: null, dismissed: null, opened: null, asFound: null };
