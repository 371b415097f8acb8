import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Streams } from '../http/answers';
import type { Metrics } from '../http/metrics';
import { METRICS } from '../tokens';

@Controller()
export class MetricsController {
  constructor(@Inject(METRICS) private readonly metrics: Metrics) {}

  @Streams(ROUTES.metrics)
  async show(@Res() reply: FastifyReply): Promise<void> {
    const text = await this.metrics.text();
    await reply.header('content-type', 'text/plain; version=0.0.4; charset=utf-8').send(text);
  }
}
