/**
 * Keeps the files of the app, so that it opens without a network. Only files: what the plant answers is kept by the
 * app itself, person by person, and no answer of the API ever goes through here.
 */

/** Filled in by the build: what the floor needs, each name with the hash of its contents. */
const FILES = JSON.parse('__FILES__') as readonly string[];
const VERSION = '__VERSION__';
const PAGE = '/index.html';
const OURS = 'studbook-files-';
const CACHE = OURS + VERSION;

/** The boundary: the compiler takes this file for a page's, the browser runs it as a worker. */
const worker = globalThis as unknown as ServiceWorkerScope;
type ServiceWorkerScope = {
  readonly location: { readonly origin: string };
  readonly skipWaiting: () => Promise<void>;
  readonly clients: { readonly claim: () => Promise<void> };
  readonly addEventListener: <E extends keyof Heard>(event: E, hear: (event: Heard[E]) => void) => void;
};
type Waiting = { readonly waitUntil: (work: Promise<unknown>) => void };
type Heard = {
  readonly install: Waiting;
  readonly activate: Waiting;
  readonly message: Waiting & { readonly data: unknown };
  readonly fetch: { readonly request: Request; readonly respondWith: (answer: Promise<Response>) => void };
};

const keepFiles = async (): Promise<void> => {
  const cache = await caches.open(CACHE);
  await cache.addAll([PAGE, ...FILES]);
};

const dropOld = async (): Promise<void> => {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(OURS) && name !== CACHE).map((name) => caches.delete(name)),
  );
  await worker.clients.claim();
};

const kept = async (request: Request | string): Promise<Response | undefined> =>
  (await caches.open(CACHE)).match(request);

/** A file whose name has its hash never changes: once seen, it is never asked for again. */
const hashed = async (request: Request): Promise<Response> => {
  const known = await kept(request);
  if (known !== undefined) return known;
  const answer = await fetch(request);
  if (answer.ok) await (await caches.open(CACHE)).put(request, answer.clone());
  return answer;
};

/** Every address of the app is the same page. */
const page = async (request: Request): Promise<Response> => (await kept(PAGE)) ?? fetch(request);

const isApi = (path: string): boolean => /^\/(?:api|metrics)(?:\/|$)/.test(path);

worker.addEventListener('install', (event) => event.waitUntil(keepFiles()));
worker.addEventListener('activate', (event) => event.waitUntil(dropOld()));
worker.addEventListener('message', (event) => {
  if (event.data === 'take over') event.waitUntil(worker.skipWaiting());
});
worker.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== worker.location.origin || isApi(pathname)) return;
  if (pathname.startsWith('/assets/') || FILES.includes(pathname)) event.respondWith(hashed(request));
  else if (request.mode === 'navigate') event.respondWith(page(request));
});
