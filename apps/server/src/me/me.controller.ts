import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import { Controller } from '@nestjs/common';
import { Answers } from '../http/answers';
import { WhoAsks } from '../http/asked';
import type { Who } from '../http/who';

@Controller()
export class MeController {
  @Answers(ROUTES.me)
  show(@WhoAsks() { me }: Who): Promise<AnswerOf<'me'>> {
    return Promise.resolve(me);
  }
}
