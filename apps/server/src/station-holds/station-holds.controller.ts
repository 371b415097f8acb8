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
export class StationHoldsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.stationHold)
  stationHold(@Told() told: Telling<'stationHold'>): Promise<AnswerOf<'stationHold'>> {
    return recorded(this.plant.tell.stationHold(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.stationRelease)
  stationRelease(@Told() told: Telling<'stationRelease'>): Promise<AnswerOf<'stationRelease'>> {
    return recorded(this.plant.tell.stationRelease(told.body, told.sender, told.params));
  }
}
