import { createHash } from 'node:crypto';
import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked } from '../http/asked';
import { found } from '../http/told';
import { PLANT } from '../tokens';

const NOT_MODIFIED = 304;

@Controller()
export class KitController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.kit)
  async show(
    @Asked() { params }: Question<'station'>,
    @Req() { headers }: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AnswerOf<'kit'>> {
    const kit = found(await this.plant.asks.kit(params.station), 'station', params.station);
    const tag = tagOf(kit);
    reply.header('etag', tag);
    // HTTP sends no body with this status (RFC 9110, 15.4.5), whatever a method returns.
    if (headers['if-none-match'] === tag) reply.status(NOT_MODIFIED);
    return kit;
  }
}

/** Of what is in it, not of the ledger's head: elsewhere in the plant something happens all the time. */
const tagOf = ({ position: _position, ...rest }: AnswerOf<'kit'>): string => {
  const line = { ...rest.line, position: 0 };
  const sections = rest.sections.map((one) => ({ ...one, section: { ...one.section, position: 0 } }));
  const text = JSON.stringify({ ...rest, line, sections });
  return `"${createHash('sha256').update(text).digest('base64url')}"`;
};
