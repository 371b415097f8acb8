import type { Shown } from '@libs/plant';
import type { FastifyRequest } from 'fastify';
import type { Door } from './door';
import { notSignedIn } from './not-signed-in';
import { Problem } from './problem';
import type { Who } from './who';

type Showing = { readonly request: FastifyRequest; readonly who: Who; readonly shown: Shown };

/** Shown once more by whoever is signed in. The session stays: nobody is signed out by a slip of the finger. */
export const assertProven = async (
  { access, stepOf }: Door,
  { request, who, shown }: Showing,
): Promise<string> => {
  const proven = await access.prove(who.me.actor, shown, await stepOf(request.headers.cookie));
  if (proven.ok) return proven.means;
  const { fields } = notSignedIn(proven);
  throw new Problem({ ...fields, status: fields.status === 401 ? 422 : fields.status });
};
