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
export class HoldsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.holds)
  open(): Promise<AnswerOf<'holds'>> {
    return this.plant.asks.holds();
  }

  @Answers(ROUTES.hold)
  place(@Told() told: Telling<'hold'>): Promise<AnswerOf<'hold'>> {
    return recorded(this.plant.tell.hold(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.release)
  release(@Told() told: Telling<'release'>): Promise<AnswerOf<'release'>> {
    return recorded(this.plant.tell.release(told.body, told.sender, told.params));
  }
}
