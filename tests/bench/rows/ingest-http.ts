import { fork } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Route, SentBodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { dataFolder, openAccess, openPlantAt } from '@libs/plant';
import type { Plant, Sender } from '@libs/plant';
import { Controller } from '@nestjs/common';
import { z } from 'zod';
import { start } from '../../../apps/server/src/composition/start';
import { Answers } from '../../../apps/server/src/http/answers';
import { demonstrationRulebookFiles, WET_HALF } from '../../support/demonstration-rulebook';
import { mountLots } from '../../support/lots';
import type { Contest, Row } from '../bench';

/** Tablets, gauges and importers that send at the same moment. */
const CONNECTIONS = 64;
/** A round of a few seconds: longer ones tell no more, and all rows are measured in one go. */
const REQUESTS = 10_000;
const HOMES = 60;

/** Signed in, body read, and nothing done: what this server costs before the plant is asked. */
const EMPTY: Route = {
  ...ROUTES.lot,
  path: '/api/empty',
  summary: 'Nothing',
  body: z.unknown(),
  answer: z.strictObject({}),
  keyed: false,
};

@Controller()
class EmptyController {
  @Answers(EMPTY)
  answer(): Promise<Record<string, never>> {
    return Promise.resolve({});
  }
}

const { role: _role, sections: _sections, ...DESIGN } = WET_HALF;
const sender = (key: string): Sender => ({ key, actor: 'manager', assurance: 'pin' });

const startHome = async (plant: Plant, home: string): Promise<readonly string[]> => {
  const serials = [`${home}-A`, `${home}-B`];
  const ordered: SentBodyOf<'home'> = {
    home,
    model: 'Alder',
    design: DESIGN,
    sections: serials.map((serial, half) => ({ serial, design: { role: half === 0 ? 'wet' : 'dry' } })),
  };
  await plant.tell.home(ROUTES.home.body.parse(ordered), sender(home), {});
  for (const serial of serials) {
    await plant.tell.start(ROUTES.start.body.parse({ serial, at: 'chassis' }), sender(serial), {});
  }
  return serials;
};

/** A plant with sections on the line, and a machine that may tell of them. */
const fill = async (
  data: string,
): Promise<{ readonly token: string; readonly serials: readonly string[] }> => {
  const files = dataFolder(data);
  const plant = await openPlantAt({ at: { file: files.ledger }, keys: files.keys, name: 'Bench' });
  await plant.open('Bench', 'America/Chicago', true, sender('open'));
  const issued = await plant.issueRevision(
    demonstrationRulebookFiles(),
    '2026-01-01T00:00:00Z',
    sender('issue'),
  );
  if (!issued.ok) throw new Error(JSON.stringify(issued.problems));
  await mountLots(plant);
  const serials: string[] = [];
  for (let n = 0; n < HOMES; n += 1) serials.push(...(await startHome(plant, `B-${String(n)}`)));
  await plant.close();

  const access = await openAccess({ sqlite: files.access });
  const { token } = await access.makeToken({ role: 'machine', name: 'bench' });
  await access.close();
  return { token, serials };
};

/** What a station sends all day: a signature, and a signature with values; nothing that opens a hold. */
const bodiesFor = (serials: readonly string[]): readonly string[] =>
  serials.flatMap((serial) => {
    const told = { serial, crew: 'chassis', station: 'chassis', device: 'tablet-1', deviceSeq: 1 };
    return [
      { ...told, operation: 'frame-staged' },
      {
        ...told,
        operation: 'gear-fitted',
        values: [
          { characteristic: 'axles', value: '4', unit: '1' },
          { characteristic: 'braked-axles', value: '2', unit: '1' },
        ],
      },
    ].map((body) => JSON.stringify(body));
  });

type Answer = { readonly perSecond: number; readonly failed?: string };

const load = (child: ChildProcess, order: object): Promise<number> =>
  new Promise((resolve, reject) => {
    child.once('message', ({ perSecond, failed }: Answer) => {
      if (failed === undefined) resolve(perSecond);
      else reject(new Error(failed));
    });
    child.send(order);
  });

const prepare = async (size: number): Promise<Contest> => {
  const folder = mkdtempSync(join(tmpdir(), 'studbook-bench-http-'));
  const { token, serials } = await fill(folder);
  const settings = {
    port: 0,
    host: '127.0.0.1',
    data: folder,
    databaseUrl: null,
    demonstration: true,
    secureCookies: false,
  };
  const server = await start(settings, () => undefined, {
    web: join(folder, 'none'),
    also: [EmptyController],
  });
  const child = fork(join(__dirname, '../load/http-load.mjs'), { execArgv: [] });
  const { hostname: host, port } = new URL(server.address);
  const order = {
    host,
    port: Number(port),
    token,
    connections: CONNECTIONS,
    requests: Math.min(size, REQUESTS),
    status: 201,
    bodies: bodiesFor(serials),
  };

  return {
    ours: () => load(child, { ...order, path: ROUTES.work.path }),
    peer: () => load(child, { ...order, path: EMPTY.path }),
    close: async () => {
      child.disconnect();
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

export const ingestHttpRow: Row = {
  name: 'ingest-http',
  unit: 'requests/s',
  better: 'more',
  peerName: 'this server’s empty authenticated POST',
  goal: 0.4,
  prepare,
};
