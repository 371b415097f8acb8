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
export class CorrectionsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.wrongSerial)
  serial(@Told() told: Telling<'wrongSerial'>): Promise<AnswerOf<'wrongSerial'>> {
    return recorded(this.plant.tell.wrongSerial(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.correction)
  values(@Told() told: Telling<'correction'>): Promise<AnswerOf<'correction'>> {
    return recorded(this.plant.tell.correction(told.body, told.sender, told.params));
  }
}
