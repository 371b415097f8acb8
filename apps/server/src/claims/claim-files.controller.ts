import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import { SentBody, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { found } from '../http/told';
import type { Who } from '../http/who';
import { DOOR, PLANT } from '../tokens';

@Controller()
export class ClaimFilesController {
  constructor(
    @Inject(PLANT) private readonly plant: Plant,
    @Inject(DOOR) private readonly door: Door,
  ) {}

  @Answers(ROUTES.claimsFile)
  claimsFile(
    @SentBody() { csv }: BodyOf<'claimsFile'>,
    @WhoAsks() { me, assurance }: Who,
  ): Promise<AnswerOf<'claimsFile'>> {
    return this.plant.claimsFile(csv, { actor: me.actor, assurance, roles: me.roles });
  }

  /** That addresses were taken, and why, is on record before the first byte leaves. */
  @Answers(ROUTES.exposureFile)
  async exposureFile(
    @SentBody() { claim, cause, method, reason: text }: BodyOf<'exposureFile'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'exposureFile'>> {
    const csv = found(await this.plant.exposureFile({ claim, cause, method }), 'cause', cause);
    const reason = this.plant.statedReason.seal(me.actor, text);
    const data = { account: me.actor, what: 'exposure', subject: claim, reason };
    await this.door.access.notes.note({ type: 'ExportTaken', data });
    return { csv };
  }
}
