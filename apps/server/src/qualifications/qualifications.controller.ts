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
export class QualificationsController {
  constructor(@Inject(PLANT) private readonly plant: Plant) {}

  @Answers(ROUTES.qualification)
  qualify(@Told() told: Telling<'qualification'>): Promise<AnswerOf<'qualification'>> {
    return recorded(this.plant.tell.qualification(told.body, told.sender, told.params));
  }

  @Answers(ROUTES.qualificationEnd)
  end(@Told() told: Telling<'qualificationEnd'>): Promise<AnswerOf<'qualificationEnd'>> {
    return recorded(this.plant.tell.qualificationEnd(told.body, told.sender, told.params));
  }
}
