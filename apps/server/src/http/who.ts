import type { AnswerOf } from '@libs/contracts';
import type { Assurance, Signature } from '@libs/kernel';
import type { FastifyRequest } from 'fastify';

/** Who is asking, and how that was known. */
export type Who = {
  readonly me: AnswerOf<'me'>;
  readonly assurance: Assurance;
  readonly secret: string;
  /** What a token is held to; null: all that its role may. */
  readonly scopes: readonly string[] | null;
  /** The bound tablet the session was opened on. */
  readonly tablet: string | null;
  /** Given by hand for this request. */
  readonly signature?: Signature;
};

const asking = new WeakMap<FastifyRequest, Who>();

/** Written once by the guard, read by whoever answers. Kept beside the request, not on it. */
export const rememberWho = (request: FastifyRequest, who: Who): void => {
  asking.set(request, who);
};

/** Only called behind the guard; a route for anyone has nobody to name. */
export const whoAsks = (request: FastifyRequest): Who => {
  const who = asking.get(request);
  if (who === undefined) throw new Error(`${request.url} asks who is there, but its route is open to anyone`);
  return who;
};
