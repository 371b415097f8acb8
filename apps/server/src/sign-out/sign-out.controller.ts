import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { Answers } from '../http/answers';
import { WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { endedCookie } from '../http/session-cookie';
import type { Who } from '../http/who';
import type { Setting } from '../tokens';
import { DOOR, SETTING } from '../tokens';

@Controller()
export class SignOutController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.signOut)
  async signOut(
    @WhoAsks() { me, assurance, secret }: Who,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AnswerOf<'signOut'>> {
    // A machine's token outlives its requests; it is withdrawn on the command line.
    if (assurance === 'session') await this.door.access.signOut(secret);
    reply.header('set-cookie', endedCookie(this.setting.secureCookies));
    return me;
  }
}
