import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Req } from '@nestjs/common';
import type { FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, SentBody, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { passkeySiteNeeded } from '../http/passkey-site';
import { Problem } from '../http/problem';
import { assertProven } from '../http/proven';
import { found } from '../http/told';
import type { Who } from '../http/who';
import type { Setting } from '../tokens';
import { DOOR, SETTING } from '../tokens';

@Controller()
export class PasskeysController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.passkeyQuestion)
  async ask(
    @SentBody() shown: BodyOf<'passkeyQuestion'>,
    @WhoAsks() who: Who,
    @Req() request: FastifyRequest,
  ): Promise<AnswerOf<'passkeyQuestion'>> {
    const site = passkeySiteNeeded(this.setting.origin, request.headers.host);
    await assertProven(this.door, { request, who, shown });
    const options = await this.door.access.beginPasskey(who.me.actor, who.me.name, site);
    return { options: { ...options } };
  }

  @Answers(ROUTES.passkey)
  async add(
    @SentBody() named: BodyOf<'passkey'>,
    @WhoAsks() { me }: Who,
    @Req() { headers }: FastifyRequest,
  ): Promise<AnswerOf<'passkey'>> {
    const site = passkeySiteNeeded(this.setting.origin, headers.host);
    if (!(await this.door.access.addPasskey(me.actor, named, site))) throw notAnswered();
    return { done: true };
  }

  @Answers(ROUTES.passkeyEnd)
  async end(
    @Asked() { params: { passkey } }: Question<'passkey'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'passkeyEnd'>> {
    const own = (await this.door.access.factorsOf(me.actor)).find(
      ({ id, kind }) => id === passkey && kind === 'passkey',
    );
    const { id } = found(own, 'passkey', passkey);
    await this.door.access.endFactor(me.actor, id, me.actor);
    return { done: true };
  }
}

const notAnswered = (): Problem =>
  new Problem({
    status: 422,
    code: 'passkey-not-made',
    title: 'The authenticator did not answer what was asked',
    detail: 'Begin again; the question holds for five minutes and is answered once.',
    errors: [{ pointer: '#/answer', detail: 'is no answer to an open question' }],
  });
