import type { AnswerOf, BodyOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, SentBody, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { listedSecret } from '../http/listed-secret';
import { found } from '../http/told';
import type { Who } from '../http/who';
import { DOOR } from '../tokens';

@Controller()
export class ApiTokensController {
  constructor(@Inject(DOOR) private readonly door: Door) {}

  @Answers(ROUTES.tokens)
  async list(): Promise<AnswerOf<'tokens'>> {
    return { tokens: (await this.door.access.listed('token')).map(listedSecret) };
  }

  @Answers(ROUTES.token)
  make(@SentBody() wish: BodyOf<'token'>, @WhoAsks() { me }: Who): Promise<AnswerOf<'token'>> {
    return this.door.access.makeToken(wish, me.actor);
  }

  @Answers(ROUTES.tokenEnd)
  async end(
    @Asked() { params: { token } }: Question<'token'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'tokenEnd'>> {
    const tokens = await this.door.access.listed('token');
    const known = found(
      tokens.find(({ id }) => id === token),
      'token',
      token,
    );
    await this.door.access.end(known.id, me.actor);
    return { done: true };
  }
}
