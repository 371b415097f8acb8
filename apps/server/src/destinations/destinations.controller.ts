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
export class DestinationsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.site)
  site(): Promise<AnswerOf<'site'>> {
    return this.plant.asks.site();
  }

  @Answers(ROUTES.destination)
  destination(@Told() told: Telling<'destination'>): Promise<AnswerOf<'destination'>> {
    return recorded(this.plant.tell.destination(told.body, told.sender, told.params));
  }
}
