import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Streams } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { found } from '../http/told';
import type { Who } from '../http/who';
import { DOOR, PLANT } from '../tokens';

@Controller()
export class PacketsController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
  ) {}

  /** That it was taken is on record before the first byte leaves. */
  @Streams(ROUTES.packet)
  async take(
    @Asked() { params, query }: Question<'serial'>,
    @WhoAsks() { me }: Who,
    @Res() reply: FastifyReply,
  ): Promise<void> {
    const at = query.at === undefined ? null : Number(query.at);
    const packet = found(await this.plant.packet(params.serial, at), 'serial', params.serial);
    const data = { account: me.actor, what: 'packet', subject: packet.home };
    await this.door.access.notes.note({ type: 'ExportTaken', data });
    await reply
      .header('content-type', 'application/zip')
      .header('content-disposition', `attachment; filename="${nameOf(packet.home, packet.position)}"`)
      .header('x-evidence-sha256', packet.evidence)
      .send(Buffer.from(packet.zip));
  }
}

/** Serials have no character that a file name could not have; whatever else comes is left out. */
const nameOf = (home: string, position: number): string =>
  `${home.replace(/[^A-Za-z0-9._-]/g, '')}-at-${String(position)}.zip`;
