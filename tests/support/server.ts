import { randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { AnswerOf } from '@libs/contracts';
import { dataFolder, openAccess, openPlantAt } from '@libs/plant';
import type { NewPerson, GuessCost, Plant, Sender } from '@libs/plant';
import request from 'supertest';
import type { Test } from 'supertest';
import type { Settings } from '../../apps/server/src/composition/settings';
import { start } from '../../apps/server/src/composition/start';
import type { Served } from '../../apps/server/src/composition/start';
import { demonstrationRulebookFiles } from './demonstration-rulebook';

/** Invented, one of each; everyone's PIN is the same. */
export const PIN = '2468';
const PEOPLE: readonly NewPerson[] = [
  { person: 'lead', name: 'Leon', roles: ['station-lead'], crew: 'electrical', stations: [] },
  { person: 'manager', name: 'Mara', roles: ['quality-manager'], crew: 'quality', stations: [] },
  { person: 'inspector', name: 'Ines', roles: ['inspector'], crew: 'quality', stations: [] },
  { person: 'administrator', name: 'Adah', roles: ['administrator'], crew: null, stations: [] },
  { person: 'agency', name: 'Vera', roles: ['agency-inspector'], crew: null, stations: [] },
  { person: 'auditor', name: 'Aldo', roles: ['auditor'], crew: null, stations: [] },
];

/** A hundredth of the real work for a PIN: every test server signs people in. */
const CHEAP: GuessCost = { memoryKiB: 64, passes: 1 };

/** A real server on a real SQLite file, over the demonstration's rulebook. */
export type TestServer = {
  readonly address: string;
  /** Its data folder. */
  readonly data: string;
  /** A machine's token. */
  readonly token: string;
  /** The session cookie of someone who signed in by PIN. */
  readonly session: (person: string) => Promise<string>;
  readonly get: (path: string, cookie?: string) => Test;
  /** As a tablet sends it: signed in, under a key of its own unless one is given. */
  readonly post: (path: string, body: object, sent?: { readonly by?: string; readonly key?: string }) => Test;
  /** Signs by hand what will be sent under this key. */
  readonly sign: (by: string, key: string) => Promise<void>;
  readonly head: () => Promise<number>;
  readonly eventsOf: (serial: string) => Promise<AnswerOf<'history'>['entries']>;
  readonly log: readonly string[];
  readonly setupCode: () => string | null;
  readonly stop: () => Promise<void>;
  readonly again: () => Promise<void>;
  readonly clear: () => Promise<void>;
};

export type TestServerWish = {
  readonly demonstration?: boolean;
  /** A PostgreSQL database in place of a SQLite file. */
  readonly databaseUrl?: string;
  /** Who works there; left out: one of each role. */
  readonly people?: readonly NewPerson[];
  /** What was told before the server came up. */
  readonly before?: (plant: Plant) => Promise<void>;
  /** PINs count only on bound tablets, as at a plant that is no demonstration. */
  readonly pinsOnTablets?: boolean;
  readonly origin?: string;
  readonly provider?: Settings['provider'];
  /** Who is signed in from the start; left out: everybody. */
  readonly signedIn?: readonly string[];
  /** Passwords besides the PIN. */
  readonly passwords?: { readonly [person: string]: string };
  /** Networks of its own that its feed may post to. */
  readonly feedNetworks?: readonly string[];
} & Partial<Served>;

const sender = (key: string): Sender => ({ key, actor: 'manager', assurance: 'pin' });

const passwordsOf = ({ passwords = {} }: TestServerWish) => Object.entries(passwords);

const fill = async (folder: string, wish: TestServerWish): Promise<string> => {
  const { demonstration = true, databaseUrl, people = PEOPLE, before } = wish;
  const passwords = passwordsOf(wish);
  const files = dataFolder(folder);
  const plant = await openPlantAt({
    at: databaseUrl === undefined ? { file: files.ledger } : { url: databaseUrl },
    keys: files.keys,
    name: 'Test plant',
  });
  await plant.open('Test plant', 'America/Chicago', demonstration, sender('open'));
  const issued = await plant.issueRevision(
    demonstrationRulebookFiles(),
    '2026-01-01T00:00:00.000-06:00',
    sender('issue'),
  );
  if (!issued.ok) throw new Error(JSON.stringify(issued.problems));
  for (const person of people) await plant.enroll(person, sender(`enroll-${person.person}`));
  await before?.(plant);
  await plant.close();

  const access = await openAccess(
    databaseUrl === undefined ? { sqlite: files.access } : { postgres: databaseUrl },
    Date.now,
    CHEAP,
  );
  for (const { person } of people) await access.addPerson(person, PIN, { shown: true });
  for (const [person, password] of passwords) await access.setPassword(person, password);
  const { token } = await access.makeToken({ role: 'machine', name: 'tape gauge' });
  await access.close();
  return token;
};

export const openTestServer = async (wish: TestServerWish = {}): Promise<TestServer> => {
  const data = mkdtempSync(join(tmpdir(), 'studbook-server-'));
  const token = await fill(data, wish);
  const log: string[] = [];
  const settings = {
    host: '127.0.0.1',
    data,
    databaseUrl: wish.databaseUrl ?? null,
    demonstration: true,
    secureCookies: false,
    pinsAnywhere: wish.pinsOnTablets !== true,
    origin: wish.origin ?? null,
    provider: wish.provider ?? null,
    feedNetworks: wish.feedNetworks ?? [],
  };
  const open = (port: number) =>
    start({ ...settings, port }, (event, fields) => log.push(JSON.stringify({ event, ...fields })), {
      web: wish.web ?? join(data, 'no-web'),
      also: wish.also,
    });
  let server = await open(0);
  const { address } = server;

  const sessions = new Map<string, Promise<string>>();
  const signIn = async (person: string): Promise<string> => {
    const answer = await request(address).post('/api/sign-in').send({ person, pin: PIN }).expect(200);
    return String(answer.headers['set-cookie']).split(';')[0] ?? '';
  };
  const session = (person: string): Promise<string> => {
    const known = sessions.get(person) ?? signIn(person);
    sessions.set(person, known);
    return known;
  };
  const { people = PEOPLE } = wish;
  const signedIn = wish.signedIn ?? people.map(({ person }) => person);
  await Promise.all(signedIn.map(session));
  const cookieOf = new Map(
    await Promise.all([...sessions].map(async ([who, cookie]) => [who, await cookie] as const)),
  );

  const get: TestServer['get'] = (path, cookie = cookieOf.get('manager') ?? '') =>
    request(address).get(path).set('cookie', cookie);
  const stop = (): Promise<void> => server.close();
  return {
    address,
    data,
    token,
    log,
    setupCode: () => server.setupCode,
    session,
    get,
    post: (path, body, { by = 'lead', key = randomUUID() } = {}) =>
      request(address)
        .post(path)
        .set('cookie', cookieOf.get(by) ?? '')
        .set('idempotency-key', `"${key}"`)
        .send(body),
    sign: async (by, key) => {
      await request(address)
        .post('/api/signatures')
        .set('cookie', await session(by))
        .send({ key, secret: PIN })
        .expect(200);
    },
    head: async () => (await get('/api/health').expect(200)).body.head,
    eventsOf: async (serial) => {
      const { body } = await get(`/api/homes/${serial}/history`).expect(200);
      return body.entries.filter((entry: { readonly serial: string }) => entry.serial === serial);
    },
    stop,
    again: async () => {
      server = await open(Number(new URL(address).port));
    },
    clear: async () => {
      await stop();
      rmSync(data, { recursive: true, force: true });
    },
  };
};
