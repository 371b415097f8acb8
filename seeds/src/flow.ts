import type { Card } from './measured';
import type { Said, Telling } from './telling';

/** What somebody does next: send these in this order, look a serial up, or wait. */
export type Step =
  | { readonly is: 'tell'; readonly tellings: readonly Telling[] }
  | { readonly is: 'look'; readonly serial: string; readonly key: string }
  | { readonly is: 'wait'; readonly untilMs: number };
export type Reply = { readonly said: readonly Said[]; readonly cards: readonly Card[] };
/** One thread of the story: it stops at every step until the plant has answered. */
export type Flow<T = void> = Generator<Step, T, Reply>;

export function* tell(...tellings: readonly Telling[]): Flow<readonly Said[]> {
  const reply = yield { is: 'tell', tellings };
  return reply.said;
}

/** The build plan of a serial as its screen shows it. `key` names the design: each is looked up once. */
export function* look(serial: string, key: string): Flow<readonly Card[]> {
  const reply = yield { is: 'look', serial, key };
  return reply.cards;
}

export function* waitUntil(untilMs: number): Flow {
  yield { is: 'wait', untilMs };
}
