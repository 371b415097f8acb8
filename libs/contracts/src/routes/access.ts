import { z } from 'zod';
import * as access from '../access';
import * as screens from '../screens';
import { get, tell } from './route';

const administrators = { access: ['administrator'] } as const;

/** Signing in and what anyone may ask. */
export const accessRoutes = {
  health: get('/api/health', 'Whether the server is ready', screens.HealthAnswer, { access: 'anyone' }),
  metrics: get('/metrics', 'How this server does, for Prometheus', z.string(), {
    access: ['administrator', 'machine'],
    media: 'text/plain',
  }),
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
  setup: get('/api/setup', 'Whether the plant waits for its first administrator', access.SetupAnswer, {
    access: 'anyone',
  }),
  setUp: tell(
    '/api/setup',
    'Make the first administrator, by the code printed where the server was started',
    { body: access.SetupRequest, answer: access.SetupDone },
    { access: 'anyone', status: 200, keyed: false },
  ),
  people: get('/api/people', 'Who works here, and who may sign in', access.PeopleAnswer, administrators),
  person: tell(
    '/api/people',
    'Enroll somebody, or change their roles',
    { body: access.PersonRequest, answer: access.PersonAnswer },
    administrators,
  ),
  personPin: tell(
    '/api/people/{person}/pin',
    'Give somebody a new PIN; the old one and all their sessions end',
    { body: access.NoBody, answer: access.PinAnswer },
    { ...administrators, keyed: false },
  ),
  leaving: tell(
    '/api/people/{person}/leaving',
    'Somebody leaves: their access ends at once everywhere',
    { body: access.NoBody, answer: access.Done },
    administrators,
  ),
  erasure: tell(
    '/api/people/{person}/erasure',
    'Erase a person: name and notes can never be read again; what was done, and every proof of it, stays',
    { body: access.NoBody, answer: access.Done },
    administrators,
  ),
  sessions: get(
    '/api/sessions',
    'Sessions that are open: your own, or all for an administrator',
    access.SessionsAnswer,
  ),
  sessionEnd: tell(
    '/api/sessions/{session}/end',
    'End a session',
    { body: access.NoBody, answer: access.Done },
    { access: 'signed-in', keyed: false, status: 200 },
  ),
  tokens: get('/api/tokens', 'Tokens of programs', access.TokensAnswer, administrators),
  token: tell(
    '/api/tokens',
    'Make a token for a program; it is shown once',
    { body: access.TokenRequest, answer: access.TokenAnswer },
    { ...administrators, keyed: false },
  ),
  tokenEnd: tell(
    '/api/tokens/{token}/end',
    'Withdraw a token',
    { body: access.NoBody, answer: access.Done },
    { ...administrators, keyed: false, status: 200 },
  ),
  accesses: get('/api/accesses', 'The ledger of accesses, latest first', access.AccessesAnswer, {
    access: ['administrator', 'auditor'],
    query: {
      before: {
        required: false,
        about: 'Only what stands before this position',
        schema: z.string().regex(/^\d{1,15}$/, 'a ledger position: digits'),
      },
    },
  }),
} as const;
