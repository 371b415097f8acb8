import type { AnswerOf } from '@libs/contracts';
import { ask } from './client';
import type { Answered, Sent } from './client';
import { hereModule } from './here';
import { shownUnsent } from './outbox';
import type { Wanted, WebRoute } from './paths';

/** What a tablet can answer by itself. */
const ANSWERED_HERE: ReadonlySet<WebRoute> = new Set<WebRoute>(['section', 'line']);

/** Asks the server; where nobody answers, what this device knows. */
export const askOrHere = async <N extends WebRoute>(
  route: N,
  wanted: Wanted,
  sent: Sent = {},
): Promise<Answered<AnswerOf<N>>> => {
  const result = await ask(route, wanted, sent);
  if (result.ok || result.trouble.kind !== 'unreachable' || !ANSWERED_HERE.has(route)) return result;
  const answer = await (await hereModule()).answerHere(route, wanted, shownUnsent());
  // It answers each route in that route's own shape.
  return answer === undefined ? result : { ok: true, answer: answer as AnswerOf<N> };
};
