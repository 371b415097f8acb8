import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import { SentBody } from '../http/asked';
import type { Door } from '../http/door';
import { wrongPasskey } from '../http/wrong-passkey';
import { passkeySiteNeeded } from '../http/passkey-site';
import { sessionCookie } from '../http/session-cookie';
import type { Setting } from '../tokens';
import { DOOR, SETTING } from '../tokens';

@Controller()
export class PasskeySignInController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.signInQuestion)
  async ask(@Req() { headers }: FastifyRequest): Promise<AnswerOf<'signInQuestion'>> {
    const options = await this.door.access.askPasskey(passkeySiteNeeded(this.setting.origin, headers.host));
    return { options: { ...options } };
  }

  @Answers(ROUTES.passkeySignIn)
  async signIn(
    @SentBody() { answer }: BodyOf<'passkeySignIn'>,
    @Req() { headers }: FastifyRequest,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AnswerOf<'passkeySignIn'>> {
    const { access, sessionIn, stepOf, whoIs } = this.door;
    const site = passkeySiteNeeded(this.setting.origin, headers.host);
    const person = await access.passkeyOf(answer, site);
    if (person === undefined) throw wrongPasskey();
    const { tablet } = await stepOf(headers.cookie);
    const outcome = await access.letIn(person, 'passkey', { tablet, replaces: sessionIn(headers.cookie) });
    const who = await whoIs(outcome.session);
    if (who === undefined) throw wrongPasskey();
    reply.header('set-cookie', sessionCookie(outcome.session, outcome.expiresAt, this.setting.secureCookies));
    return { me: who.me };
  }
}
