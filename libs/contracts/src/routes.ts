import { z } from 'zod';
import * as figures from './quality-screens';
import * as screens from './screens';
import * as shapes from './shapes';

/** Roles that may use a route; `anyone` needs no sign-in. */
export type Access = 'anyone' | 'signed-in' | readonly string[];

/** A query parameter: text that `schema` checks. */
export type Parameter = { readonly required: boolean; readonly about: string; readonly schema?: z.ZodType };

export type Route = {
  readonly method: 'GET' | 'POST';
  /** OpenAPI form: `/api/sections/{serial}`. */
  readonly path: string;
  readonly summary: string;
  readonly access: Access;
  readonly query?: { readonly [name: string]: Parameter };
  readonly body?: z.ZodType;
  readonly answer: z.ZodType;
  readonly status: number;
  /** Takes an Idempotency-Key: 400 when it is missing, 422 when it was used for other content. */
  readonly keyed: boolean;
  readonly media?: string;
};

type Getting<A extends z.ZodType> = Route & { readonly answer: A };
type Telling<B extends z.ZodType, A extends z.ZodType> = Route & { readonly body: B; readonly answer: A };

const get = <A extends z.ZodType>(
  path: string,
  summary: string,
  answer: A,
  more: Partial<Route> = {},
): Getting<A> => ({
  method: 'GET',
  path,
  summary,
  access: 'signed-in',
  status: 200,
  keyed: false,
  ...more,
  answer,
});
const tell = <B extends z.ZodType, A extends z.ZodType>(
  path: string,
  summary: string,
  { body, answer }: { readonly body: B; readonly answer: A },
  more: Partial<Route> = {},
): Telling<B, A> => ({
  method: 'POST',
  path,
  summary,
  access: ['station-lead', 'quality-manager', 'inspector', 'administrator', 'machine'],
  status: 201,
  keyed: true,
  ...more,
  body,
  answer,
});

const span = {
  from: {
    required: false,
    about: 'First day, 2026-03-01; left out: 90 days before `to`',
    schema: shapes.Day,
  },
  to: { required: false, about: 'Last day; left out: the last day on record', schema: shapes.Day },
};
const findingClass = {
  required: false,
  about: 'nonconformance (default), punch, shortage, record',
  schema: shapes.FindingClass,
};
const STAGES = /^(?:on-line|pulled|ordered|shipped)(?:,(?:on-line|pulled|ordered|shipped))*$/;
const deciders = ['quality-manager', 'inspector', 'administrator'] as const;

/** Every route there is: the server answers by this table, the OpenAPI document and the web client come from it. */
export const ROUTES = {
  health: get('/api/health', 'Whether the server is ready', screens.HealthAnswer, { access: 'anyone' }),
  openapi: get('/api/openapi.json', 'This document', z.record(z.string(), z.unknown()), { access: 'anyone' }),
  signIns: get('/api/sign-ins', 'Who may sign in by PIN', screens.SignInsAnswer, { access: 'anyone' }),
  signIn: tell(
    '/api/sign-in',
    'Sign in by PIN; sets a session cookie',
    { body: screens.SignInRequest, answer: screens.SignInAnswer },
    {
      access: 'anyone',
      status: 200,
      keyed: false,
    },
  ),
  signOut: get('/api/sign-out', 'End the session', screens.Me, { method: 'POST', status: 200 }),
  me: get('/api/me', 'Who is signed in', screens.Me),
  plant: get('/api/plant', 'Stations, places, codes: what every screen needs once', screens.PlantAnswer),
  line: get('/api/line', 'Every section on the line', screens.LineAnswer, {
    query: {
      stage: {
        required: false,
        about: 'on-line, pulled, ordered, shipped, several with commas; left out: on-line and pulled',
        schema: z.string().regex(STAGES, 'on-line, pulled, ordered, shipped, with commas between'),
      },
    },
  }),
  section: get(
    '/api/sections/{serial}',
    'A section: what is due, required, and what blocks it',
    screens.SectionAnswer,
    {
      query: {
        at: { required: false, about: 'Station asked about, or `all`; left out: where the section is' },
      },
    },
  ),
  homes: get('/api/homes', 'Homes, by part of a serial', screens.HomesAnswer, {
    query: { search: { required: false, about: 'Part of a serial, model or label number' } },
  }),
  history: get(
    '/api/homes/{serial}/history',
    "A home's history, in the order it happened",
    screens.HistoryAnswer,
  ),
  yield: get('/api/yield', 'First-pass yield of each station over a span', figures.YieldAnswer, {
    query: { by: { required: true, about: '`station`', schema: z.literal('station') }, ...span },
  }),
  yieldTrend: get(
    '/api/yield/trend',
    'First-pass yield of one station, week by week',
    figures.YieldTrendAnswer,
    {
      query: { station: { required: true, about: 'Station' }, ...span },
    },
  ),
  passages: get('/api/yield/sections', 'The sections behind a figure', figures.PassagesAnswer, {
    query: {
      station: { required: true, about: 'Station' },
      which: {
        required: false,
        about: 'left (default), nonconforming, escaped, incomplete',
        schema: z.enum(['left', 'nonconforming', 'escaped', 'incomplete']),
      },
      ...span,
    },
  }),
  defectCounts: get('/api/defects/counts', 'Defects counted, the worst first', figures.DefectCountsAnswer, {
    query: {
      by: {
        required: false,
        about: 'code (default), component, symptom, station, operation',
        schema: z.enum(['code', 'component', 'symptom', 'station', 'operation']),
      },
      station: { required: false, about: 'Only those charged to this station' },
      class: findingClass,
      ...span,
    },
  }),
  defects: get('/api/defects', 'Defects, latest first', figures.DefectsAnswer, {
    query: {
      station: { required: false, about: 'Charged to this station' },
      serial: { required: false, about: 'Of this section' },
      component: { required: false, about: 'Component' },
      symptom: { required: false, about: 'Symptom' },
      class: { ...findingClass, about: 'nonconformance, punch, shortage, record; left out: all' },
      ...span,
    },
  }),
  stream: get(
    '/api/stream',
    'Live news from the ledger (server-sent events; Last-Event-ID catches up)',
    screens.StreamNews,
    {
      media: 'text/event-stream',
      query: {
        after: {
          required: false,
          about: 'Position after which to begin, where no Last-Event-ID is sent; left out: only what is new',
          schema: z.string().regex(/^\d{1,15}$/, 'a ledger position: digits'),
        },
      },
    },
  ),
  work: tell('/api/work', 'Tell that work was done', { body: shapes.WorkRequest, answer: shapes.WorkAnswer }),
  asking: tell(
    '/api/askings',
    'Ask whether you may go on: cleared or refused',
    { body: shapes.AskingRequest, answer: shapes.AskingAnswer },
    {
      status: 200,
    },
  ),
  signOff: tell('/api/sign-offs', 'Sign a station off: all as planned, except', {
    body: shapes.SignOffRequest,
    answer: shapes.WorkAnswer,
  }),
  wrongSerial: tell('/api/corrections/serial', 'Put a wrong serial right', {
    body: shapes.WrongSerialRequest,
    answer: shapes.WorkAnswer,
  }),
  correction: tell('/api/corrections/values', 'Put recorded values right', {
    body: shapes.ValueCorrectionRequest,
    answer: shapes.WorkAnswer,
  }),
  defect: tell('/api/defects', 'Record a defect', { body: shapes.DefectRequest, answer: shapes.WorkAnswer }),
  rework: tell('/api/defects/{defect}/rework', 'Tell that rework is done', {
    body: shapes.ReworkRequest,
    answer: shapes.WorkAnswer,
  }),
  verification: tell('/api/defects/{defect}/verification', 'Verify rework done by someone else', {
    body: shapes.VerificationRequest,
    answer: shapes.WorkAnswer,
  }),
  closing: tell('/api/defects/{defect}/closing', 'Close a punch item or a shortage', {
    body: shapes.ClosingRequest,
    answer: shapes.WorkAnswer,
  }),
  hold: tell('/api/holds', 'Hold a section', { body: shapes.HoldRequest, answer: shapes.WorkAnswer }),
  release: tell(
    '/api/holds/{hold}/release',
    'Release a hold',
    { body: shapes.ReleaseRequest, answer: shapes.WorkAnswer },
    { access: deciders },
  ),
  move: tell('/api/moves', 'Move a section to a station', {
    body: shapes.MoveRequest,
    answer: shapes.WorkAnswer,
  }),
  pull: tell('/api/pulls', 'Pull a section off the line', {
    body: shapes.PullRequest,
    answer: shapes.WorkAnswer,
  }),
  return: tell('/api/returns', 'Return a pulled section to the line', {
    body: shapes.ReturnRequest,
    answer: shapes.WorkAnswer,
  }),
  shipment: tell('/api/shipments', 'Ship a section', {
    body: shapes.ShipmentRequest,
    answer: shapes.WorkAnswer,
  }),
  label: tell('/api/labels', 'Affix a certification label', {
    body: shapes.LabelRequest,
    answer: shapes.WorkAnswer,
  }),
  start: tell('/api/starts', 'Start a section on the line', {
    body: shapes.StartRequest,
    answer: shapes.WorkAnswer,
  }),
  home: tell(
    '/api/homes',
    'Order a home',
    { body: shapes.HomeRequest, answer: shapes.WorkAnswer },
    { access: ['quality-manager', 'administrator', 'machine'] },
  ),
  lot: tell('/api/lots', 'Receive a lot', { body: shapes.LotRequest, answer: shapes.Recorded }),
  mounting: tell('/api/mountings', 'Mount a lot at a station', {
    body: shapes.MountingRequest,
    answer: shapes.Recorded,
  }),
} as const satisfies Record<string, Route>;

export type RouteName = keyof typeof ROUTES;
/** What a route answers, and what it is told, as TypeScript sees them. */
export type AnswerOf<N extends RouteName> = z.output<(typeof ROUTES)[N]['answer']>;
export type TellingName = {
  [N in RouteName]: (typeof ROUTES)[N] extends { readonly body: z.ZodType } ? N : never;
}[RouteName];
export type BodyOf<N extends TellingName> = z.output<(typeof ROUTES)[N]['body']>;
/** Before defaults are filled in: what a client may send. */
export type SentBodyOf<N extends TellingName> = z.input<(typeof ROUTES)[N]['body']>;
