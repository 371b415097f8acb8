import type { AnswerOf, SentBodyOf } from '@libs/contracts';
import { useSyncExternalStore } from 'react';
import { clockSkew, deviceName, nextCount } from '../queue/device';
import { differing } from '../queue/entry';
import type { Differing, Judged, Unsent, WebTelling } from '../queue/entry';
import { floorStore, isFull, putEntry } from '../queue/store';
import { ask } from './client';
import type { Answered, Trouble } from './client';
import { hereModule } from './here';
import { hereAndNow, newKey } from './key';
import { knowPaths, knowsPath } from './paths';
import type { Wanted } from './paths';

export type { Differing, Unsent, WebTelling } from '../queue/entry';

type Shown = { readonly unsent: readonly Unsent[]; readonly differing: readonly Differing[] };
let shown: Shown = { unsent: [], differing: [] };
let person: string | null = null;
const listeners = new Set<() => void>();
/** Other windows of this device show the same queue. */
const windows = 'BroadcastChannel' in globalThis ? new BroadcastChannel('studbook.queue') : null;

const show = (next: Partial<Shown>): void => {
  shown = { ...shown, ...next };
  listeners.forEach((listener) => listener());
};
const subscribe = (listener: () => void): (() => void) => {
  listeners.add(listener);
  return () => listeners.delete(listener);
};
export const useUnsent = (): readonly Unsent[] => useSyncExternalStore(subscribe, () => shown.unsent);
export const shownUnsent = (): readonly Unsent[] => shown.unsent;
export const useDiffering = (): readonly Differing[] =>
  useSyncExternalStore(subscribe, () => shown.differing);

/** Made in this window and not answered yet: somebody waits for it in a form. */
const onTheirWay = new Set<string>();
/** What was on its way when its window was closed has nobody waiting any more: what becomes of it must stay in sight. */
const asFound = (entry: Unsent): Unsent =>
  entry.state === 'new' && !onTheirWay.has(entry.key) ? { ...entry, state: 'waiting' } : entry;

/** What lies on this device, in the order of making. */
const readAll = async (): Promise<void> => {
  const store = await floorStore();
  const [unsent, unlike] = await Promise.all([store.getAll('queue'), store.getAll('differing')]);
  show({ unsent: unsent.map(asFound).sort((one, other) => one.seq - other.seq), differing: unlike });
};
windows?.addEventListener('message', () => void readAll());
if ('indexedDB' in globalThis) void readAll();
const saidToOthers = (): void => windows?.postMessage('changed');

const replaced = (entry: Unsent): readonly Unsent[] =>
  shown.unsent.map((one) => (one.key === entry.key ? entry : one));

const keepAs = async (entry: Unsent): Promise<void> => {
  await putEntry(entry);
  show({ unsent: replaced(entry) });
};

/** Off the device, with what the record found otherwise put beside it in the same step. */
const settled = async (entry: Unsent, unlike: Differing | undefined): Promise<void> => {
  const transaction = (await floorStore()).transaction(['queue', 'differing'], 'readwrite');
  await Promise.all([
    transaction.objectStore('queue').delete(entry.key),
    unlike === undefined ? undefined : transaction.objectStore('differing').put(unlike),
    transaction.done,
  ]);
  show({
    unsent: shown.unsent.filter(({ key }) => key !== entry.key),
    differing: unlike === undefined ? shown.differing : [...shown.differing, unlike],
  });
};

const UNREACHABLE = { ok: false, trouble: { kind: 'unreachable' } } as const;
const NOT_SIGNED_IN = 401;
const SLOW_DOWN = 429;
/** Nobody has looked at the entry: it goes on waiting. */
const isUnheard = (trouble: Trouble): boolean =>
  trouble.kind === 'unreachable' || trouble.status === NOT_SIGNED_IN || trouble.status === SLOW_DOWN;

const findingsIn = (answer: object): readonly Judged[] =>
  'findings' in answer && Array.isArray(answer.findings) ? (answer.findings as readonly Judged[]) : [];

/** What the tablet itself says of it, by the rules it has; kept with the entry, to be compared with what the record says. */
const judged = async (entry: Unsent): Promise<Unsent['here']> =>
  (await hereModule()).judgedHere(entry, shown.unsent);

const deliver = async (entry: Unsent): Promise<Answered<object>> => {
  if (!knowsPath(entry.route)) knowPaths((await import('./office-paths')).OFFICE_PATHS);
  const result = await ask(entry.route, entry.wanted, { body: entry.body, key: entry.key });
  if (result.ok) {
    await settled(entry, differing(entry, findingsIn(result.answer)));
    return result;
  }
  if (isUnheard(result.trouble)) {
    if (entry.state !== 'waiting') await keepAs({ ...entry, state: 'waiting', here: await judged(entry) });
    return result.trouble.kind === 'unreachable' ? result : UNREACHABLE;
  }
  // Whoever has just made it still has it in the form, and is told there.
  if (entry.state === 'new') await settled(entry, undefined);
  else await keepAs({ ...entry, state: 'refused', trouble: result.trouble });
  return result;
};

/** One window of this device sends at a time, one entry after the other. */
const alone = async <A>(work: () => Promise<A>): Promise<A> =>
  'locks' in navigator ? navigator.locks.request('studbook.send', work).then((answer) => answer) : work();
let last: Promise<unknown> = Promise.resolve();
const inTurn = <A>(work: () => Promise<A>): Promise<A> => {
  const next = last.then(() => alone(work));
  // Whoever waits for the turn does not care how the one before it went; its own caller does.
  last = next.catch(() => undefined);
  return next;
};

const isMine = (entry: Unsent): boolean =>
  entry.state !== 'refused' && (entry.person === null || entry.person === person);

/** All that waits, oldest first, up to `upTo` and with it; stops at the first that finds nobody. */
const sendWaiting = async (upTo?: string): Promise<Answered<object>> => {
  await readAll();
  let result: Answered<object> = UNREACHABLE;
  for (const entry of shown.unsent.filter(isMine)) {
    result = await deliver(entry);
    const isNobody = !result.ok && result.trouble.kind === 'unreachable';
    if (isNobody || entry.key === upTo) break;
  }
  saidToOthers();
  return result;
};

/** So many may go before an entry while its maker waits; behind more, it is sent when its turn comes. */
const MOST_BEFORE = 3;

type Made = { readonly wanted?: Wanted };
const entryOf = <N extends WebTelling>(route: N, body: SentBodyOf<N>, { wanted = {} }: Made): Unsent => {
  const madeAt = hereAndNow();
  const seq = nextCount();
  const skewMs = clockSkew();
  const clock = {
    occurredAt: madeAt,
    device: deviceName(),
    deviceSeq: seq,
    ...(skewMs === undefined ? {} : { skewMs }),
  };
  return {
    key: newKey(),
    seq,
    person,
    route,
    wanted,
    body: { ...clock, ...(body as Unsent['body']) },
    madeAt,
    state: 'new',
    trouble: null,
    here: null,
  };
};

/** Nothing more can be kept here: it is sent at once or not at all, and the form keeps what it holds. */
const FULL: Trouble = { kind: 'problem', status: 507, code: 'device-full', says: '', errors: [] };
const sendUnkept = async (entry: Unsent): Promise<Answered<object>> => {
  const result = await ask(entry.route, entry.wanted, { body: entry.body, key: entry.key });
  return result.ok || result.trouble.kind === 'problem' ? result : { ok: false, trouble: FULL };
};

const keptOnDevice = async (entry: Unsent): Promise<boolean> => {
  try {
    await putEntry(entry);
    return true;
  } catch (fault) {
    if (isFull(fault)) return false;
    throw fault;
  }
};

const tellAnything = async (entry: Unsent): Promise<Answered<object>> => {
  const before = shown.unsent.filter(isMine).length;
  const isNext = before <= MOST_BEFORE;
  const kept: Unsent = isNext ? entry : { ...entry, state: 'waiting', here: await judged(entry) };
  if (!(await keptOnDevice(kept))) return sendUnkept(entry);
  show({ unsent: [...shown.unsent, kept] });
  if (!isNext) {
    void sendAgain();
    return UNREACHABLE;
  }
  onTheirWay.add(entry.key);
  const result = await inTurn(() => sendWaiting(entry.key));
  onTheirWay.delete(entry.key);
  return result;
};

/** Tell the record something. Kept on this device until the server has answered, under one key. */
export const tell = <N extends WebTelling>(
  route: N,
  body: SentBodyOf<N>,
  made: Made = {},
): Promise<Answered<AnswerOf<N>>> =>
  // The answer is of the route that was told.
  tellAnything(entryOf(route, body, made)) as Promise<Answered<AnswerOf<N>>>;

/** Send what waits, oldest first; stops at the first that still finds nobody. */
export const sendAgain = async (): Promise<void> => {
  await inTurn(() => sendWaiting());
};

/** Somebody looked at what the record did not take: it goes once more, or off this device. */
export const retry = async (entry: Unsent): Promise<void> => {
  await keepAs({ ...entry, state: 'waiting', trouble: null });
  await sendAgain();
};
export const dismiss = async (entry: Unsent): Promise<void> => {
  await settled(entry, undefined);
  saidToOthers();
};
export const seen = async (unlike: Differing): Promise<void> => {
  await (await floorStore()).delete('differing', unlike.key);
  show({ differing: shown.differing.filter(({ key }) => key !== unlike.key) });
  saidToOthers();
};

/** Who tells from now on. What they told before and is still here goes out under their own name. */
export const tellAs = (actor: string | null): void => {
  person = actor;
  if (actor !== null) void sendAgain();
};
