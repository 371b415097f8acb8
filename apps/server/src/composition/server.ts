import type { Access, AccessLog, Feed, Plant } from '@libs/plant';
import type { Provider, Type } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import type { FastifyInstance } from 'fastify';
import { openDoor } from '../http/door';
import type { Door } from '../http/door';
import { fastifyServer } from '../http/fastify-server';
import type { IdentityProvider } from '../http/identity-provider';
import type { Log } from '../http/log';
import { openStreams } from '../http/open-streams';
import type { OpenStreams } from '../http/open-streams';
import type { FaultReader } from '../http/problem.filter';
import { openMetrics } from '../http/metrics';
import type { Metrics } from '../http/metrics';
import { limitRates } from '../http/rate-limits';
import { webFiles } from '../http/web-files';
import type { Tls } from '../http/fastify-server';
import type { Setup } from '../setup/setup';
import type { Setting } from '../tokens';
import {
  ACCESS_LOG,
  DOOR,
  FAULTS,
  FEED,
  LOG,
  METRICS,
  PLANT,
  PROVIDER,
  SETTING,
  SETUP,
  STREAMS,
} from '../tokens';
import { AppModule } from './app.module';
import { nestLog } from './nest-log';

export type ServerParts = {
  readonly plant: Plant;
  readonly access: Access;
  readonly accessLog: AccessLog;
  readonly feed: Feed;
  readonly setup: Setup;
  readonly setting: Setting;
  readonly readFault: FaultReader;
  readonly log: Log;
  /** Folder of the built web app. */
  readonly web: string;
  readonly also?: readonly Type[] | undefined;
  readonly trustedHops?: number | false;
  readonly tls?: Tls | null;
  readonly provider?: IdentityProvider | null;
};

export type Server = {
  /** Returns the address, with the port the system gave when asked for port 0. */
  readonly listen: (port: number, host: string) => Promise<string>;
  /** Ends what is open, answers what has come in, and takes nothing new. */
  readonly close: () => Promise<void>;
  readonly app: NestFastifyApplication;
};

type Wanted = { readonly port: number; readonly host: string; readonly scheme: 'http:' | 'https:' };

/** Nest says http of every server that was not made by its own option for TLS. */
const listen = async (app: NestFastifyApplication, { port, host, scheme }: Wanted): Promise<string> => {
  await app.listen(port, host);
  return (await app.getUrl()).replace(/^https?:/, scheme);
};

/** Without Nest's own parsers Fastify takes JSON only, which is all this API speaks. */
const NEST = { abortOnError: false, bodyParser: false } as const;

type Made = {
  readonly door: Door;
  readonly streams: OpenStreams;
  readonly metrics: Metrics;
};

/** What the controllers ask for, by name. */
const provided = (parts: ServerParts, { door, streams, metrics }: Made): readonly Provider[] => [
  { provide: PLANT, useValue: parts.plant },
  { provide: DOOR, useValue: door },
  { provide: ACCESS_LOG, useValue: parts.accessLog },
  { provide: FEED, useValue: parts.feed },
  { provide: SETUP, useValue: parts.setup },
  { provide: METRICS, useValue: metrics },
  { provide: PROVIDER, useValue: parts.provider ?? null },
  { provide: SETTING, useValue: parts.setting },
  { provide: FAULTS, useValue: parts.readFault },
  { provide: LOG, useValue: parts.log },
  { provide: STREAMS, useValue: streams },
];

export const createServer = async (parts: ServerParts): Promise<Server> => {
  const { plant, access, setting, log, web, also, trustedHops = false, tls = null } = parts;
  const door = openDoor(access, plant, setting);
  const streams = openStreams();
  const metrics = openMetrics(plant.head, plant.writes);
  const options = { ...NEST, logger: nestLog(log) };
  const adapter = fastifyServer(webFiles(web), { trustedHops, tls, secure: setting.secureCookies });
  const app = await NestFactory.create<NestFastifyApplication>(
    AppModule.over(provided(parts, { door, streams, metrics }), also),
    adapter,
    // eslint-disable-next-line @typescript-eslint/no-unsafe-class-instance-assignment -- Nest's options are a class that is never built.
    options,
  );
  const server = adapter.getInstance<FastifyInstance>();
  await limitRates(server, door);
  metrics.watch(server);
  await app.init();

  return {
    app,
    listen: (port, host) => listen(app, { port, host, scheme: tls === null ? 'http:' : 'https:' }),
    close: async () => {
      streams.endAll();
      await app.close();
    },
  };
};
