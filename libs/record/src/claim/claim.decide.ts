import { accept, assertNever, floorDay, reject } from '@libs/kernel';
import type { Decision, StreamKind } from '@libs/kernel';
import type {
  AsFoundReported,
  CauseConfirmed,
  ClaimDetermined,
  ClaimEvent,
  ClaimOpened,
  ComplaintDismissed,
  ComplaintLogged,
  RecordedClaimEvent,
} from './claim.events';
import { noClaim } from './claim.state';
import type { Claim } from './claim.state';

export type ClaimCommand =
  | {
      readonly type: 'LogComplaint';
      readonly data: {
        readonly logged: ComplaintLogged['data'];
        /** Said with it, in the ten seconds at the desk; null: later. */
        readonly dismissed: ComplaintDismissed['data'] | null;
        readonly opened: ClaimOpened['data'] | null;
      };
    }
  | { readonly type: 'DismissComplaint'; readonly data: ComplaintDismissed['data'] }
  | { readonly type: 'OpenClaim'; readonly data: ClaimOpened['data'] }
  | { readonly type: 'ReportAsFound'; readonly data: AsFoundReported['data'] }
  | { readonly type: 'ConfirmCause'; readonly data: CauseConfirmed['data'] }
  | { readonly type: 'DetermineClaim'; readonly data: ClaimDetermined['data'] };

/** Listed in order of precedence. */
export type ClaimRejection =
  | { readonly code: 'claim-logged-already'; readonly claim: string }
  | { readonly code: 'claim-unknown'; readonly claim: string }
  | { readonly code: 'claim-triaged-already'; readonly claim: string }
  | { readonly code: 'home-unknown'; readonly home: string }
  | { readonly code: 'section-not-of-home'; readonly section: string }
  | { readonly code: 'component-unknown'; readonly component: string }
  | { readonly code: 'symptom-unknown'; readonly symptom: string }
  | { readonly code: 'source-unknown'; readonly source: string };

export type ClaimFacts = {
  /** Sections of the home; null: nobody ordered it. */
  readonly sections: readonly string[] | null;
  /** A rulebook that lists none takes any. */
  readonly components: ReadonlySet<string>;
  readonly symptoms: ReadonlySet<string>;
  /** Operations, and outside causes of the fault map. */
  readonly sources: ReadonlySet<string>;
};

type ClaimDecision = Decision<ClaimEvent, ClaimRejection>;

export const decide = (command: ClaimCommand, claim: Claim, facts: ClaimFacts): ClaimDecision => {
  switch (command.type) {
    case 'LogComplaint':
      return log(command.data, claim, facts);
    case 'DismissComplaint':
      return triaged(command.data.claim, claim) ?? accept({ type: 'ComplaintDismissed', data: command.data });
    case 'OpenClaim':
      return triaged(command.data.claim, claim) ?? open(command.data, facts);
    case 'ReportAsFound':
      return report(command.data, claim, facts);
    case 'DetermineClaim':
      return ofOpened(claim, { type: 'ClaimDetermined', data: command.data });
    case 'ConfirmCause':
      return ofOpened(claim, { type: 'CauseConfirmed', data: command.data });
    default:
      return assertNever(command);
  }
};

/** What can only be said of a claim, not of a complaint that nobody has looked at. */
const ofOpened = (
  claim: Claim,
  event: Extract<ClaimEvent, { readonly type: 'ClaimDetermined' | 'CauseConfirmed' }>,
): ClaimDecision =>
  claim.opened === null ? reject({ code: 'claim-unknown', claim: event.data.claim }) : accept(event);

type Logging = Extract<ClaimCommand, { readonly type: 'LogComplaint' }>['data'];

const log = ({ logged, dismissed, opened }: Logging, claim: Claim, facts: ClaimFacts): ClaimDecision => {
  if (claim.logged !== null) return reject({ code: 'claim-logged-already', claim: logged.claim });
  if (logged.home !== null && facts.sections === null)
    return reject({ code: 'home-unknown', home: logged.home });
  const first: ClaimEvent = { type: 'ComplaintLogged', data: logged };
  if (opened !== null) {
    const decision = open(opened, facts);
    return decision.ok ? accept<ClaimEvent>(first, ...decision.events) : decision;
  }
  return dismissed === null
    ? accept(first)
    : accept<ClaimEvent>(first, { type: 'ComplaintDismissed', data: dismissed });
};

/** A complaint is decided on once. What was dismissed in error comes in again as a complaint of its own. */
const triaged = (id: string, { logged, dismissed, opened }: Claim): ClaimDecision | null => {
  if (logged === null) return reject({ code: 'claim-unknown', claim: id });
  return dismissed !== null || opened !== null ? reject({ code: 'claim-triaged-already', claim: id }) : null;
};

const isStranger = (known: ReadonlySet<string>, code: string): boolean => known.size > 0 && !known.has(code);

const open = (data: ClaimOpened['data'], facts: ClaimFacts): ClaimDecision => {
  const { home, section, component, symptom } = data;
  if (facts.sections === null) return reject({ code: 'home-unknown', home });
  if (section !== null && !facts.sections.includes(section)) {
    return reject({ code: 'section-not-of-home', section });
  }
  if (isStranger(facts.components, component)) return reject({ code: 'component-unknown', component });
  if (isStranger(facts.symptoms, symptom)) return reject({ code: 'symptom-unknown', symptom });
  return accept({ type: 'ClaimOpened', data });
};

const report = (data: AsFoundReported['data'], { opened }: Claim, { sources }: ClaimFacts): ClaimDecision => {
  if (opened === null) return reject({ code: 'claim-unknown', claim: data.claim });
  const stranger = [...data.pointsTo, ...data.speaksAgainst].find((one) => isStranger(sources, one));
  return stranger === undefined
    ? accept({ type: 'AsFoundReported', data })
    : reject({ code: 'source-unknown', source: stranger });
};

export const evolve = (claim: Claim, event: RecordedClaimEvent): Claim => {
  switch (event.type) {
    case 'ComplaintLogged':
      return { ...claim, logged: { ...event.data, by: event.actor } };
    case 'ComplaintDismissed':
      return { ...claim, dismissed: event.data.because, dismissedOn: floorDay(event.occurredAt) };
    case 'ClaimOpened':
      return { ...claim, opened: event.data };
    case 'AsFoundReported':
      return { ...claim, asFound: event.data };
    case 'ClaimDetermined':
      return { ...claim, determined: { ...event.data, by: event.actor } };
    case 'CauseConfirmed':
      return { ...claim, confirmed: { ...event.data, by: event.actor, at: event.occurredAt } };
    default:
      return assertNever(event);
  }
};

export const CLAIM: StreamKind<ClaimCommand, Claim, ClaimEvent, ClaimRejection, ClaimFacts> = {
  name: 'claim',
  initial: noClaim,
  decide,
  evolve,
};
