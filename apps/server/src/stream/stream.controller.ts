import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Streams } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import type { Log } from '../http/log';
import type { OpenStreams } from '../http/open-streams';
import { API_HEADERS } from '../http/security-headers';
import type { Who } from '../http/who';
import { DOOR, LOG, PLANT, STREAMS } from '../tokens';
import { startingPoint } from './last-event-id';
import { writeNews } from './news-writer';

/** Proxies and phones drop a silent connection after 30 to 60 seconds. */
const KEEP_ALIVE_MS = 15_000;
/** How long a listener waits before it comes back. */
const RETRY_MS = 2_000;

const HEADERS = { 'content-type': 'text/event-stream; charset=utf-8', 'x-accel-buffering': 'no' } as const;

@Controller()
export class StreamController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
    @Inject(STREAMS) private readonly streams: OpenStreams,
    @Inject(LOG) private readonly log: Log,
  ) {}

  @Streams(ROUTES.stream)
  async listen(
    @Asked() { query }: Question,
    @WhoAsks() who: Who,
    @Req() request: FastifyRequest,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const after = startingPoint(request.headers['last-event-id'], query.after) ?? (await this.plant.head());

    reply.hijack();
    const out = reply.raw;
    out.writeHead(200, { ...API_HEADERS, ...HEADERS });
    out.write(`retry: ${String(RETRY_MS)}\n\n`);
    this.keepTelling(reply, after, who);
  }

  private keepTelling({ raw: out }: FastifyReply, after: number, who: Who): void {
    const failed = (fault: unknown): void => {
      this.log('stream-failed', { fault: fault instanceof Error ? fault.message : String(fault) });
      out.end();
    };
    const stopTelling = writeNews({ out, news: this.plant.news, after, failed });
    const lookAgain = (): void => {
      this.door.whoIs(who.secret).then((still) => still ?? out.end(), failed);
    };
    const keepAlive = setInterval(() => {
      out.write(': still here\n\n');
      lookAgain();
    }, KEEP_ALIVE_MS);
    // Whoever loses their access stops hearing at once, not at the next beat.
    const deaf = this.door.access.onEnded(lookAgain);
    const ended = this.streams.add(() => out.end());

    out.once('close', () => {
      stopTelling();
      clearInterval(keepAlive);
      deaf();
      ended();
    });
  }
}
