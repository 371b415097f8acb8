import type { AnswerOf } from '@libs/contracts';
import { ROUTES } from '@libs/contracts';
import type { Plant } from '@libs/plant';
import { Controller, Inject } from '@nestjs/common';
import { Answers } from '../http/answers';
import type { Telling } from '../http/asked';
import { Told } from '../http/asked';
import { recorded } from '../http/told';
import { PLANT } from '../tokens';

@Controller()
export class RedTagsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.redTag)
  redTag(@Told() told: Telling<'redTag'>): Promise<AnswerOf<'redTag'>> {
    return recorded(this.plant.tell.redTag(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.redTagLifting)
  redTagLifting(@Told() told: Telling<'redTagLifting'>): Promise<AnswerOf<'redTagLifting'>> {
    return recorded(this.plant.tell.redTagLifting(told.body, told.sender, told.params));
  }
}
