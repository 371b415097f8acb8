import { z } from 'zod';
import * as more from '../inspection-shapes';
import * as shapes from '../shapes';
import { get, tell } from './route';

/** What nobody but the inspection agency says. */
const agency = { access: ['agency-inspector'] } as const;
const plant = { access: ['quality-manager', 'administrator'] } as const;
const recorded = shapes.Recorded;

/** The inspection agency at its work (24 CFR 3282.362). */
export const inspectionRoutes = {
  agency: get('/api/agency', 'What the inspection agency looks at first', more.AgencyAnswer),
  agencyReport: get(
    '/api/agency/report',
    'The month as the agency reports it (24 CFR 3282.553)',
    more.AgencyReportAnswer,
    {
      query: {
        month: {
          required: true,
          about: 'Month, 2026-03',
          schema: z.string().regex(/^\d{4}-(?:0[1-9]|1[0-2])$/, 'a month, 2026-03'),
        },
      },
    },
  ),
  visit: tell('/api/agency/visits', 'Record a visit', { body: more.VisitRequest, answer: recorded }, agency),
  stageSeen: tell(
    '/api/agency/stages',
    'Mark the stage at which a section was seen',
    { body: more.StageSeenRequest, answer: shapes.WorkAnswer },
    agency,
  ),
  redTag: tell(
    '/api/red-tags',
    'Place a red tag',
    { body: more.RedTagRequest, answer: shapes.WorkAnswer },
    agency,
  ),
  redTagLifting: tell(
    '/api/red-tags/{tag}/lifting',
    'Lift a red tag',
    { body: more.RedTagLiftingRequest, answer: shapes.WorkAnswer },
    { ...agency, signed: 'inspected' },
  ),
  observation: tell(
    '/api/agency/observations',
    'Note something that hangs on no section',
    { body: more.ObservationRequest, answer: recorded },
    agency,
  ),
  observationAnswer: tell(
    '/api/agency/observations/{observation}/answer',
    'Answer the agency',
    { body: more.ObservationAnswerRequest, answer: recorded },
    plant,
  ),
  observationClosing: tell(
    '/api/agency/observations/{observation}/closing',
    'Accept the plant’s answer, or ask for another',
    { body: more.ObservationClosingRequest, answer: recorded },
    agency,
  ),
} as const;
