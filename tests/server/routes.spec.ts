import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Example, Route } from '@libs/contracts';
import {
  EXAMPLE_KEYS,
  RELEASE_KEYS,
  EXAMPLES,
  openApi,
  PLANT_TELLINGS,
  ROUTES,
  STORY,
} from '@libs/contracts';
import type { Plant } from '@libs/plant';
import {
  accessOver,
  feedSecrets,
  openAccessLog,
  openAccessRows,
  openFeed,
  openFeedRows,
  openPlantAt,
  reachWith,
} from '@libs/plant';
import type { Setting } from '../../apps/server/src/tokens';
import { createServer } from '../../apps/server/src/composition/server';
import { setupFor } from '../../apps/server/src/setup/setup';
import type { TestServer } from '../support/server';
import { openTestServer } from '../support/server';

const routes: { readonly [name: string]: Route } = ROUTES;
const examples: { readonly [name: string]: Example | undefined } = EXAMPLES;
const questions = Object.entries(routes).filter(
  ([name, { method, media }]) => method === 'GET' && media === undefined && name !== 'openapi',
);

const addressOf = (name: string): string => {
  const { params = {}, query = {} } = examples[name] ?? {};
  const path = (routes[name]?.path ?? '').replace(
    /\{(\w+)\}/g,
    (_, parameter: string) => params[parameter] ?? '',
  );
  return Object.keys(query).length === 0 ? path : `${path}?${new URLSearchParams(query).toString()}`;
};

/** Fastify prints its routes as a tree: a branch's path begins with those it hangs from. */
const routesIn = (tree: string): string[] => {
  const above: string[] = [];
  return tree.split('\n').flatMap((line) => {
    const [, indent = '', path = '', methods = ''] = /^([^/:]*)(\S+) \(([A-Z, ]+)\)/.exec(line) ?? [];
    const depth = indent.length / 4;
    above[depth] = path;
    const whole = above
      .slice(0, depth + 1)
      .join('')
      .replace(/:(\w+)/g, '{$1}');
    return methods
      .split(', ')
      .filter((method) => method !== '' && method !== 'HEAD')
      .map((method) => `${method} ${whole}`);
  });
};

describe('the table of routes', () => {
  it('is what the server answers by: each of its routes, and no other', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'studbook-routes-'));
    const plant = await openPlantAt({
      at: { file: join(folder, 'ledger.db') },
      keys: join(folder, 'keys'),
      name: 'x',
    });
    const rows = await openAccessRows({ sqlite: join(folder, 'access.db') });
    const access = accessOver(rows);
    const accessLog = await openAccessLog(
      { at: { file: join(folder, 'accesses.db') }, keys: join(folder, 'keys'), trouble: () => undefined },
      { rows, notes: access.notes },
    );
    const feed = openFeed({
      rows: await openFeedRows({ sqlite: join(folder, 'feed.db') }),
      tail: plant.tail,
      asks: plant.asks,
      secrets: feedSecrets(join(folder, 'keys')),
      reach: reachWith([]),
      mail: null,
      clock: Date.now,
      isOurs: plant.writes,
      trouble: () => undefined,
      byItself: false,
    });
    const setting: Setting = {
      engine: 'sqlite',
      ledger: 'x',
      version: '1',
      secureCookies: false,
      pinsAnywhere: true,
      origin: null,
    };
    const server = await createServer({
      plant,
      access,
      accessLog,
      feed,
      setup: setupFor(plant, access),
      setting,
      readFault: () => undefined,
      log: () => undefined,
      web: folder,
    });

    const served = server.app.getHttpAdapter().getInstance().printRoutes({ commonPrefix: false });
    expect(routesIn(served).sort()).toStrictEqual(
      Object.values(routes)
        .map(({ method, path }) => `${method} ${path}`)
        .sort(),
    );

    await server.close();
    await feed.close();
    await plant.close();
    await accessLog.close();
    await access.close();
    rmSync(folder, { recursive: true });
  });
});

/** Orders the home that the questions' examples ask about, so that they have something to answer. */
const orderAskedHome = async (plant: Plant): Promise<void> => {
  const { home } = EXAMPLES;
  const body = ROUTES.home.body.parse({
    ...(home?.body as object),
    home: 'H26-1001',
    sections: [
      { serial: 'H26-1001-A', design: { role: 'wet' } },
      { serial: 'H26-1001-B', design: { role: 'dry' } },
    ],
  });
  const told = await plant.tell.home(body, { key: 'asked', actor: 'manager', assurance: 'pin' }, {});
  if (!told.ok) throw new Error(told.rejection.code);
  const sender = (key: string) => ({ key, actor: 'manager', assurance: 'pin' }) as const;
  const gauge = { instrument: 'INS-101', kind: 'gas-gauge', properties: [], dueOn: null, inTolerance: true };
  await plant.calibrate(gauge, sender('gauge'));
  const lot = ROUTES.lot.body.parse({ lot: 'B-10001', kind: 'batt' });
  await plant.tell.lot(lot, sender('batt'), {});
  const complaint = ROUTES.complaint.body.parse({
    claim: 'C-1',
    receivedOn: '2026-11-02',
    source: 'owner',
    home: 'H26-1001',
    opened: { component: 'outlet', symptom: 'dead' },
  });
  await plant.tell.complaint(complaint, sender('complaint'), {});
  const other = ROUTES.complaint.body.parse({ claim: 'C-2', receivedOn: '2026-11-03', source: 'retailer' });
  await plant.tell.complaint(other, sender('complaint-2'), {});
  const file = ROUTES.determinationOpening.body.parse({ claim: 'C-1' });
  await plant.tell.determinationOpening(file, sender('file'), {});
};

/** Whoever a telling's example is sent by: nobody verifies their own rework, and leads release no hold. */
const SENT_BY: { readonly [name: string]: string } = {
  home: 'manager',
  quarantine: 'manager',
  lotRelease: 'manager',
  calibration: 'manager',
  qualification: 'manager',
  qualificationEnd: 'manager',
  orderChange: 'manager',
  deviation: 'manager',
  release: 'manager',
  cause: 'manager',
  disposition: 'manager',
  stationRelease: 'manager',
  visit: 'agency',
  stageSeen: 'agency',
  redTag: 'agency',
  redTagLifting: 'agency',
  observation: 'agency',
  observationAnswer: 'manager',
  observationClosing: 'agency',
  labelSupply: 'agency',
  labelVoid: 'manager',
  labelReclaim: 'agency',
  labelReplacement: 'agency',
  containment: 'manager',
  containedLook: 'manager',
  destination: 'manager',
  chartNote: 'manager',
  baseline: 'manager',
  acknowledgement: 'manager',
  alarmBudget: 'manager',
  defectCosts: 'manager',
  delivery: 'manager',
  complaint: 'manager',
  dismissal: 'manager',
  claimOpening: 'manager',
  asFound: 'manager',
  claimDecision: 'manager',
  causeConfirmation: 'manager',
  determinationOpening: 'manager',
  initialDetermination: 'manager',
  agencyPosition: 'manager',
  notification: 'manager',
  classDetermination: 'manager',
  remedyPlan: 'manager',
  planApproval: 'manager',
  remedy: 'manager',
  completion: 'manager',
  countingRule: 'manager',
  verification: 'inspector',
};

describe('the examples of the API document', () => {
  let server: TestServer;
  beforeAll(async () => {
    server = await openTestServer({ before: orderAskedHome });
  });
  afterAll(() => server.clear());

  const tell = async (name: string, { key = `example-${name}`, body = {} }: Example) => {
    const by = SENT_BY[name] ?? 'lead';
    if (routes[name]?.signed !== undefined) await server.sign(by, key);
    return server.post(addressOf(name), body as object, { key, by });
  };

  it('are there for everything that is told', () => {
    expect([...PLANT_TELLINGS].sort()).toStrictEqual([...STORY].sort());
    const told = Object.entries(routes).filter(([, { body }]) => body !== undefined);
    expect(told.filter(([name]) => examples[name] === undefined)).toStrictEqual([]);
  });

  it.each(STORY)('are recorded, sent as they stand and in order: %s', async (name) => {
    const example = examples[name] ?? {};
    if (name === 'closing') {
      const punch = await tell('defect', {
        key: EXAMPLE_KEYS.punch,
        body: { ...(EXAMPLES.defect?.body as object), class: 'punch' },
      });
      expect(punch.status).toBe(201);
    }
    if (name === 'cause') {
      const open = await tell('defect', { key: RELEASE_KEYS.open, body: EXAMPLES.defect?.body });
      expect(open.status).toBe(201);
    }
    const answer = await tell(name, example);
    // The story's home is far from its label, and so there is none to replace.
    if (name === 'labelReplacement') {
      expect(answer.body.code).toBe('label-not-on');
      return;
    }

    expect(answer.body).toMatchObject({ position: expect.any(Number) });
    expect(answer.status).toBe(routes[name]?.status);
    expect(answer.body.events.length).toBeGreaterThan(0);
    expect(routes[name]?.answer.safeParse(answer.body).error).toBeUndefined();
  });

  it.each(questions)('are answered as the document says: %s', async (name, route) => {
    const open = typeof route.access === 'string' || route.access.includes('quality-manager');
    const cookie = await server.session(open ? 'manager' : 'administrator');
    const answer = await server.get(addressOf(name), cookie).expect(route.status);
    expect(route.answer.safeParse(answer.body).error).toBeUndefined();
  });

  it('stand in the document that the server gives', async () => {
    const { body } = await server.get('/api/openapi.json').expect(200);
    expect(body).toStrictEqual(JSON.parse(JSON.stringify(openApi(body.info.version))));
    expect(body.paths['/api/work'].post.requestBody.content['application/json'].example).toStrictEqual(
      EXAMPLES.work?.body,
    );
  });
});
