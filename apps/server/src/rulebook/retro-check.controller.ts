import { once } from 'node:events';
import type { Writable } from 'node:stream';
import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Streams } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked } from '../http/asked';
import type { Log } from '../http/log';
import { API_HEADERS } from '../http/security-headers';
import { spanOf } from '../http/span';
import { found } from '../http/told';
import { LOG, PLANT } from '../tokens';
import { nameOf, whichOf } from './which';

const HEADERS = { 'content-type': 'application/x-ndjson; charset=utf-8', 'x-accel-buffering': 'no' } as const;

@Controller()
export class RetroCheckController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(LOG) private readonly log: Log,
  ) {}

  @Streams(ROUTES.retroCheck)
  async run(@Asked() { query }: Question, @Res() reply: FastifyReply): Promise<void> {
    const span = spanOf(query);
    const lines = found(
      await this.plant.rulebook.retroCheck(whichOf(query), span),
      'revision',
      nameOf(query),
    );

    reply.hijack();
    const out = reply.raw;
    out.writeHead(200, { ...API_HEADERS, ...HEADERS });
    try {
      await writeLines(out, lines);
    } catch (fault) {
      // The answer has begun: a break in the middle is all that can still be said, and `done` does not come.
      this.log('retro-check-failed', { fault: fault instanceof Error ? fault.message : String(fault) });
    }
    out.end();
  }
}

/** No faster than the other side reads, and no further than it listens. */
const writeLines = async (out: Writable, lines: AsyncIterable<AnswerOf<'retroCheck'>>): Promise<void> => {
  for await (const line of lines) {
    if (out.destroyed) return;
    if (!out.write(`${JSON.stringify(line)}\n`)) await Promise.race([once(out, 'drain'), once(out, 'close')]);
    // A turn for everybody else between two homes.
    if (line.is === 'progress') await new Promise((done) => setImmediate(done));
  }
};
