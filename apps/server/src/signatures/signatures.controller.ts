import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Req } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import { SentBody, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { passkeySiteNeeded } from '../http/passkey-site';
import { Problem } from '../http/problem';
import { assertProven } from '../http/proven';
import type { Who } from '../http/who';
import { wrongPasskey } from '../http/wrong-passkey';
import type { Setting } from '../tokens';
import { DOOR, SETTING } from '../tokens';

/** Signing by hand: whoever is signed in shows once more who they are, for one telling that is named by its key. */
@Controller()
export class SignaturesController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.signature)
  async sign(
    @SentBody() body: BodyOf<'signature'>,
    @WhoAsks() who: Who,
    @Req() request: FastifyRequest,
  ): Promise<AnswerOf<'signature'>> {
    if (who.assurance !== 'session') throw programsDoNotSign();
    const means = await this.meansOf(body, who, request);
    const at = new Date().toISOString();
    // What it stands for is said by the route it is then used at.
    const until = this.door.signatures.sign(who.secret, body.key, { meaning: 'approved', means, at });
    return { until: new Date(until).toISOString() };
  }

  private async meansOf(body: BodyOf<'signature'>, who: Who, request: FastifyRequest): Promise<string> {
    if ('secret' in body) return assertProven(this.door, { request, who, shown: body });
    const site = passkeySiteNeeded(this.setting.origin, request.headers.host);
    if ((await this.door.access.passkeyOf(body.answer, site)) !== who.me.actor) throw wrongPasskey(422);
    return 'passkey';
  }
}

const programsDoNotSign = (): Problem =>
  new Problem({
    status: 403,
    code: 'person-needed',
    title: 'Only a person signs',
    detail: 'A token cannot show that somebody looked.',
  });
