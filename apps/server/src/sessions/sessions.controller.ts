import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Question } from '../http/asked';
import { Asked, WhoAsks } from '../http/asked';
import type { Door } from '../http/door';
import { listedSecret } from '../http/listed-secret';
import { found } from '../http/told';
import type { Who } from '../http/who';
import { DOOR } from '../tokens';

@Controller()
export class SessionsController {
  constructor(@Inject(DOOR) private readonly door: Door) {}

  @Answers(ROUTES.sessions)
  async list(@WhoAsks() { me }: Who): Promise<AnswerOf<'sessions'>> {
    return { sessions: (await this.openTo(me)).map(listedSecret) };
  }

  /** Someone else's session is not told from one that is not there. */
  @Answers(ROUTES.sessionEnd)
  async end(
    @Asked() { params: { session } }: Question<'session'>,
    @WhoAsks() { me }: Who,
  ): Promise<AnswerOf<'sessionEnd'>> {
    const seen = found(
      (await this.openTo(me)).find(({ id }) => id === session),
      'session',
      session,
    );
    await this.door.access.end(seen.id, me.actor);
    return { done: true };
  }

  private async openTo({ actor, roles }: Who['me']) {
    const all = await this.door.access.listed('session');
    return roles.includes('administrator') ? all : all.filter((session) => session.actor === actor);
  }
}
