import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import { SentBody } from '../http/asked';
import type { Door } from '../http/door';
import { sessionCookie } from '../http/session-cookie';
import type { Setting } from '../tokens';
import { DOOR, SETTING } from '../tokens';
import { notSignedIn, wrongPin } from '../http/not-signed-in';

@Controller()
export class SignInController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.signIn)
  async signIn(
    @SentBody() { person, pin, code }: BodyOf<'signIn'>,
    @Req() { headers }: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AnswerOf<'signIn'>> {
    const { access, sessionIn, stepOf } = this.door;
    const step = await stepOf(headers.cookie);
    const outcome = await access.signIn(person, { secret: pin, code }, step, sessionIn(headers.cookie));
    if (!outcome.ok) throw notSignedIn(outcome);

    const who = await this.door.whoIs(outcome.session);
    if (who === undefined) throw wrongPin();

    reply.header('set-cookie', sessionCookie(outcome.session, outcome.expiresAt, this.setting.secureCookies));
    return { me: who.me };
  }
}
