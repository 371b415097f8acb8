import { z } from 'zod';
import * as screens from '../screens';
import { get, tell } from './route';

/** Signing in and what anyone may ask. */
export const accessRoutes = {
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
} as const;
