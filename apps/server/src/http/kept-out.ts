import type { Access } from '@libs/contracts';
import { Problem } from './problem';

export const unknownHere = (): Problem =>
  new Problem({
    status: 401,
    code: 'sign-in-needed',
    title: 'Sign in first',
    detail: 'Send the session cookie of POST /api/sign-in, or a token as Authorization: Bearer.',
    headers: { 'www-authenticate': 'Bearer realm="studbook"' },
  });

export const wrongRole = (access: Access, roles: readonly string[]): Problem =>
  new Problem({
    status: 403,
    code: 'role-missing',
    title: 'Your role may not do this',
    detail: `It takes one of: ${typeof access === 'string' ? access : access.join(', ')}. Yours: ${roles.join(', ') || 'none'}.`,
  });

export const scopeMissing = (scopes: readonly string[] | null): Problem =>
  new Problem({
    status: 403,
    code: 'scope-missing',
    title: 'This token is not meant for this',
    detail: `It is held to: ${(scopes ?? []).join(', ')}.`,
  });

export const otherSite = (): Problem =>
  new Problem({
    status: 403,
    code: 'other-site',
    title: 'This was sent from a page of another site',
    detail: 'Open Studbook itself, and do it there.',
  });

export const signatureNeeded = (): Problem =>
  new Problem({
    status: 403,
    code: 'signature-needed',
    title: 'This is signed by hand',
    detail:
      'POST /api/signatures with the same idempotency key and your PIN, password or passkey; then send it again.',
  });
