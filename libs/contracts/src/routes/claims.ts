import { z } from 'zod';
import * as claims from '../claim-shapes';
import * as traces from '../trace-shapes';
import * as shapes from '../shapes';
import { get, tell } from './route';

/** Owners, dealers and what they say of homes: not everyone's to read. */
const readers = ['quality-manager', 'administrator', 'inspector', 'agency-inspector', 'auditor'] as const;
const deciders = ['quality-manager', 'administrator'] as const;
const restricted = { access: readers };
const decided = { access: deciders };

const cause = {
  claim: { required: true, about: 'The claim', schema: shapes.Id },
  cause: { required: true, about: 'The key of a cause in its trace', schema: z.string().max(300) },
  method: {
    required: false,
    about: 'exact: homes known to share it; whole-group: those that cannot be excluded too (3282.404(b)-(c))',
    schema: traces.EXPOSURE_METHOD,
  },
} as const;

/** From a complaint to its cause, the homes that share it, and what was determined. */
export const claimsRoutes = {
  claims: get('/api/claims', 'Complaints and claims, the latest first', claims.ClaimsAnswer, restricted),
  claim: get('/api/claims/{claim}', 'One complaint or claim', claims.ClaimAnswer, restricted),
  trace: get(
    '/api/claims/{claim}/trace',
    'What caused it: ranked, with the evidence for and against',
    traces.TraceAnswer,
    restricted,
  ),
  exposure: get(
    '/api/exposure',
    'The homes that share a cause, each with its reason',
    traces.ExposureAnswer,
    {
      ...restricted,
      query: cause,
    },
  ),
  complaint: tell(
    '/api/claims',
    'Log a complaint; with it a claim, or why there is no failure',
    { body: claims.ComplaintRequest, answer: claims.ClaimTold },
    { access: [...deciders, 'machine'] },
  ),
  dismissal: tell(
    '/api/claims/{claim}/dismissal',
    'No failure, because ...',
    { body: claims.DismissalRequest, answer: claims.ClaimTold },
    decided,
  ),
  claimOpening: tell(
    '/api/claims/{claim}/opening',
    'A logged complaint is a claim',
    { body: claims.ClaimRequest, answer: claims.ClaimTold },
    decided,
  ),
  asFound: tell(
    '/api/claims/{claim}/as-found',
    'What was seen when it was opened up',
    { body: claims.AsFoundRequest, answer: claims.ClaimTold },
    decided,
  ),
  claimDecision: tell(
    '/api/claims/{claim}/decision',
    'No action is needed, or a noncompliance of this home alone',
    { body: claims.ClaimDecisionRequest, answer: claims.ClaimTold },
    decided,
  ),
  causeConfirmation: tell(
    '/api/claims/{claim}/cause',
    'Its cause is confirmed: charged to its station as an escape where it is on the line',
    { body: claims.CauseConfirmationRequest, answer: claims.ClaimTold },
    decided,
  ),
  delivery: tell(
    '/api/deliveries',
    'Who hauled, set and sold a home, and since when it is lived in',
    { body: claims.DeliveryRequest, answer: shapes.Recorded },
    { access: [...deciders, 'machine'] },
  ),
  determinations: get(
    '/api/determinations',
    'Determination files with their clocks',
    claims.DeterminationsAnswer,
    restricted,
  ),
  determination: get(
    '/api/determinations/{determination}',
    'One determination file, its evidence and exposure as they stood',
    claims.DeterminationAnswer,
    restricted,
  ),
  dueDays: get('/api/due-days', 'Days that are due, as a calendar feed', claims.CalendarText, {
    ...restricted,
    media: 'text/calendar',
  }),
  determinationOpening: tell(
    '/api/determinations',
    'Open a determination file: evidence and exposure are frozen into it',
    { body: claims.DeterminationRequest, answer: claims.DeterminationTold },
    decided,
  ),
  initialDetermination: tell(
    '/api/determinations/{determination}/initial',
    'Initial determination',
    { body: claims.InitialRequest, answer: claims.DeterminationTold },
    decided,
  ),
  classDetermination: tell(
    '/api/determinations/{determination}/class',
    'Class determination',
    { body: claims.ClassRequest, answer: claims.DeterminationTold },
    decided,
  ),
  agencyPosition: tell(
    '/api/determinations/{determination}/agency-position',
    'Concurrence or disagreement of the inspection agency',
    { body: claims.AgencyPositionRequest, answer: claims.DeterminationTold },
    { access: [...deciders, 'agency-inspector'] },
  ),
  notification: tell(
    '/api/determinations/{determination}/notification',
    'HUD, the state agency and the inspection agency were notified',
    { body: claims.NotificationRequest, answer: claims.DeterminationTold },
    decided,
  ),
  remedyPlan: tell(
    '/api/determinations/{determination}/plan',
    'Notification and correction plan submitted',
    { body: claims.PlanRequest, answer: claims.DeterminationTold },
    decided,
  ),
  planApproval: tell(
    '/api/determinations/{determination}/approval',
    'Plan approved',
    { body: claims.PlanApprovalRequest, answer: claims.DeterminationTold },
    decided,
  ),
  remedy: tell(
    '/api/determinations/{determination}/remedies',
    'A home notified, corrected, or its correction refused',
    { body: claims.RemedyRequest, answer: claims.DeterminationTold },
    decided,
  ),
  completion: tell(
    '/api/determinations/{determination}/completion',
    'Completion reported',
    { body: claims.CompletionRequest, answer: claims.DeterminationTold },
    decided,
  ),
  countingRule: tell(
    '/api/determinations/counting',
    'How days are counted, as counsel has it',
    { body: claims.CountingRequest, answer: claims.DeterminationTold },
    decided,
  ),
} as const;
