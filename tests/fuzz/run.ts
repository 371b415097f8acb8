import { ROLES } from '@libs/contracts';
import { buildUpTo } from '../support/build-up';
import { openTestServer } from '../support/server';
import type { TestServer } from '../support/server';
import type { Chance } from './chance';
import { chanceFrom } from './chance';
import type { Document, Operation } from './document';
import { operationsOf } from './document';
import { faultOf } from './look';
import { requestFrom } from './make';
import type { Sent } from './make';

export type FuzzWish = { readonly requests: number; readonly seed: number };
export type Found = {
  readonly fault: string;
  readonly request: string;
  readonly answer: string;
};
export type FuzzOutcome = {
  readonly found: readonly Found[];
  readonly statuses: { readonly [status: string]: number };
  readonly operations: number;
};

/** A request that is not answered within this long hangs. */
const HANGS_AFTER_MS = 30_000;
/** As many at once as a plant has tablets. */
const AT_ONCE = 16;
/** Findings past these say nothing new. */
const FOUND_MOST = 20;
/** Whole packets and whole histories are put together for these: as often as all others would be another test. */
const HEAVY: ReadonlySet<string> = new Set(['packet', 'retroCheck', 'nuisance', 'examination']);
const HEAVY_SHARE = 0.05;

type Sender = { readonly headers: { readonly [name: string]: string } };

/** Every role as a program, someone at a screen, and nobody. */
const sendersOf = async (server: TestServer): Promise<readonly Sender[]> => {
  const senders: Sender[] = [{ headers: {} }, { headers: { cookie: await server.session('manager') } }];
  for (const role of ROLES) {
    const wish = { role, name: `fuzz ${role}` };
    const made = await server.post('/api/tokens', wish, { by: 'administrator' }).expect(201);
    senders.push({ headers: { authorization: `Bearer ${String(made.body.token)}` } });
  }
  return senders;
};

const next = (chance: Chance, operations: readonly Operation[]): Operation => {
  const one = chance.oneOf(operations);
  return HEAVY.has(one.name) && !chance.often(HEAVY_SHARE) ? next(chance, operations) : one;
};

type Outcome = { readonly status: string; readonly found?: Found };

const looked = async (operation: Operation, request: string, answer: Response): Promise<Outcome> => {
  const endless = operation.name === 'stream' && answer.ok;
  const text = endless ? '' : await answer.text();
  if (endless) await answer.body?.cancel();
  const type = answer.headers.get('content-type') ?? '';
  const fault = faultOf({ status: answer.status, type, text, headers: answer.headers });
  const status = String(answer.status);
  return fault === undefined ? { status } : { status, found: { fault, request, answer: text.slice(0, 400) } };
};

/** Counted under `gone` where the connection was closed on us without an answer. */
const sendOne = async (address: string, sent: Sent, sender: Sender): Promise<Outcome> => {
  const { operation, path, body = null, headers } = sent;
  const request = `${operation.method} ${path.slice(0, 300)} ${(body ?? '').slice(0, 600)}`;
  const stop = new AbortController();
  const timer = setTimeout(() => stop.abort(), HANGS_AFTER_MS);
  try {
    const answer = await fetch(`${address}${path}`, {
      ...{ method: operation.method, headers: { ...headers, ...sender.headers } },
      ...{ signal: stop.signal, body },
    });
    return await looked(operation, request, answer);
  } catch (fault) {
    const why = stop.signal.aborted ? 'it hangs' : `no answer: ${String(fault)}`;
    return { status: 'gone', found: { fault: why, request, answer: '' } };
  } finally {
    clearTimeout(timer);
  }
};

/** What the server itself had to say: a fault that reached nobody's screen is one all the same. */
const troubleIn = (log: readonly string[]): readonly Found[] =>
  log
    .filter((line) => /"event":"(?:request-failed|accesses-not-recorded|stream-failed|stopped)"/.test(line))
    .slice(0, FOUND_MOST)
    .map((line) => ({ fault: 'the server logged a fault', request: '', answer: line.slice(0, 600) }));

const open = (): Promise<TestServer> =>
  openTestServer({
    before: async (plant) => {
      await buildUpTo(plant, { home: 'T-600', station: 'drywall', except: ['wire-protected'] });
    },
  });

/** Sends what the OpenAPI document describes, right, at its bounds and hostile, and looks at every answer. */
export const fuzz = async (
  { requests, seed }: FuzzWish,
  said: (line: string) => void,
): Promise<FuzzOutcome> => {
  const server = await open();
  const chance = chanceFrom(seed);
  const document = (await server.get('/api/openapi.json').expect(200)).body as Document;
  const operations = operationsOf(document);
  const senders = await sendersOf(server);
  const found: Found[] = [];
  const statuses: Record<string, number> = {};
  let sent = 0;

  const worker = async (): Promise<void> => {
    while (sent < requests && found.length < FOUND_MOST) {
      sent += 1;
      if (sent % 10_000 === 0) said(`${String(sent)} sent`);
      const wanted = requestFrom({ chance, document }, next(chance, operations), sent);
      const outcome = await sendOne(server.address, wanted, chance.oneOf(senders));
      statuses[outcome.status] = (statuses[outcome.status] ?? 0) + 1;
      if (outcome.found !== undefined) found.push(outcome.found);
    }
  };
  await Promise.all(Array.from({ length: AT_ONCE }, worker));
  await server.get('/api/health').expect(200);
  found.push(...troubleIn(server.log));
  await server.clear();
  return { found, statuses, operations: operations.length };
};
