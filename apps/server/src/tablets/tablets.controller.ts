import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject, Req, Res } from '@nestjs/common';
import type { FastifyReply, FastifyRequest } from 'fastify';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, SentBody, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { Problem } from '../http/problem';
import { tabletCookie, tabletIn } from '../http/session-cookie';
import { found } from '../http/told';
import type { Who } from '../http/who';
import type { Setting } from '../tokens';
import { DOOR, SETTING } from '../tokens';

/** Tablets that PINs count on: offered by an administrator, bound where somebody types the code in. */
@Controller()
export class TabletsController {
  constructor(
    @Inject(DOOR) private readonly door: Door,
    @Inject(SETTING) private readonly setting: Setting,
  ) {}

  @Answers(ROUTES.tablets)
  async list(): Promise<AnswerOf<'tablets'>> {
    return {
      tablets: (await this.door.access.tablets()).map(
        ({ tablet, name, stations, bound, madeAt, seenAt }) => ({
          ...{ tablet, name, stations: [...stations], bound },
          madeAt: new Date(madeAt).toISOString(),
          seenAt: new Date(seenAt).toISOString(),
        }),
      ),
    };
  }

  @Answers(ROUTES.tablet)
  async offer(@SentBody() wish: BodyOf<'tablet'>, @WhoAsks() { me }: Who): Promise<AnswerOf<'tablet'>> {
    const { tablet, code, until } = await this.door.access.offerTablet(wish, me.actor);
    return { tablet, code, until: new Date(until).toISOString() };
  }

  @Answers(ROUTES.tabletEnd)
  async end(
    @Asked() { params: { tablet } }: Question<'tablet'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'tabletEnd'>> {
    found((await this.door.access.endTablet(tablet, me.actor)) || undefined, 'tablet', tablet);
    return { done: true };
  }

  @Answers(ROUTES.binding)
  async binding(@Req() { headers }: FastifyRequest): Promise<AnswerOf<'binding'>> {
    return this.bindingOf(tabletIn(headers.cookie, this.setting.secureCookies));
  }

  @Answers(ROUTES.bind)
  async bind(
    @SentBody() { code }: BodyOf<'bind'>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<AnswerOf<'bind'>> {
    const bound = await this.door.access.bindTablet(code);
    if (bound === undefined) throw wrongCode();
    reply.header('set-cookie', tabletCookie(bound.secret, this.setting.secureCookies));
    return this.bindingOf(bound.secret);
  }

  private async bindingOf(secret: string | undefined): Promise<AnswerOf<'binding'>> {
    const found = secret === undefined ? undefined : await this.door.access.tabletOf(secret);
    const tablet = found && { tablet: found.tablet, name: found.name, stations: [...found.stations] };
    return { tablet: tablet ?? null, needed: !this.setting.pinsAnywhere };
  }
}

const wrongCode = (): Problem =>
  new Problem({
    status: 401,
    code: 'binding-wrong',
    title: 'That code binds no tablet',
    detail: 'Each works once, for a quarter of an hour. Ask an administrator for another.',
    errors: [{ pointer: '#/code', detail: 'is not open' }],
  });
