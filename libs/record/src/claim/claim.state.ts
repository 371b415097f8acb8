import type {
  AsFoundReported,
  CauseConfirmed,
  ClaimDetermined,
  ClaimOpened,
  ComplaintLogged,
} from './claim.events';

export type Claim = {
  readonly logged: (ComplaintLogged['data'] & { readonly by: string }) | null;
  /** Why there is no failure, sealed; null while nobody said so. */
  readonly dismissed: string | null;
  /** The day of the floor on which that was said: it ends the thirty days. */
  readonly dismissedOn: string | null;
  readonly opened: ClaimOpened['data'] | null;
  /** The last report counts. */
  readonly asFound: AsFoundReported['data'] | null;
  /** The last one counts. */
  readonly determined: (ClaimDetermined['data'] & { readonly by: string }) | null;
  readonly confirmed: (CauseConfirmed['data'] & { readonly by: string; readonly at: string }) | null;
};

export const noClaim: Claim = {
  logged: null,
  dismissed: null,
  dismissedOn: null,
  opened: null,
  asFound: null,
  determined: null,
  confirmed: null,
};
