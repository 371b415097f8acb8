import type { FastifyInstance } from 'fastify';
import { collectDefaultMetrics, Gauge, Histogram, Registry } from 'prom-client';

/** Seconds. A scan is answered in some milliseconds; what takes longer than a second has been noticed by somebody. */
const BUCKETS = [0.002, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 10];
const MS_A_SECOND = 1_000;

export type Metrics = {
  /** Prometheus text format. */
  readonly text: () => Promise<string>;
  /** Watches every request of this server. */
  readonly watch: (server: FastifyInstance) => void;
};

export const openMetrics = (head: () => Promise<number>, writes: () => Promise<boolean>): Metrics => {
  const registry = new Registry();
  collectDefaultMetrics({ register: registry });
  const answered = new Histogram({
    name: 'studbook_request_seconds',
    help: 'Time from a request to its answer, by route and status',
    labelNames: ['method', 'route', 'status'],
    buckets: BUCKETS,
    registers: [registry],
  });
  gauge(registry, 'studbook_ledger_head', 'Position of the last event in the ledger', head);
  gauge(registry, 'studbook_writes', '1 while this server is the writer of its ledger', async () =>
    (await writes()) ? 1 : 0,
  );
  return {
    text: () => registry.metrics(),
    watch: (server) => {
      server.addHook('onResponse', (request, reply, done) => {
        // The route's own pattern, never the address asked for: a serial is not a label.
        const route = request.routeOptions.url ?? 'none';
        const labels = { method: request.method, route, status: String(reply.statusCode) };
        answered.observe(labels, reply.elapsedTime / MS_A_SECOND);
        done();
      });
    },
  };
};

const gauge = (registry: Registry, name: string, help: string, read: () => Promise<number>): void => {
  const made = new Gauge({
    name,
    help,
    registers: [registry],
    collect: async () => {
      made.set(await read());
    },
  });
};
