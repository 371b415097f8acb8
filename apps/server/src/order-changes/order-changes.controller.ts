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
export class OrderChangesController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.orderChange)
  change(@Told() told: Telling<'orderChange'>): Promise<AnswerOf<'orderChange'>> {
    return recorded(this.plant.tell.orderChange(told.body, told.sender, told.params));
  }
}
