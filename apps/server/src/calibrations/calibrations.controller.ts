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
export class CalibrationsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.calibration)
  record(@Told() told: Telling<'calibration'>): Promise<AnswerOf<'calibration'>> {
    return recorded(this.plant.tell.calibration(told.body, told.sender, told.params));
  }
}
